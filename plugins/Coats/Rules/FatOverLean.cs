using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>A quick water-based skin over a film of enamel or oil that still moves.</summary>
public sealed class FatOverLean : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "A water-based coat waits until the enamel or oil under it has cured.";

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        return surface.Top is { } top && Concerns.Of(coat, top) == Concern.FatOverLean
            ? moment.WaitsFor(top, DryingState.Cured, area, $"{coat.Name} skins over {top.Name} while that still moves, and cracks.", "Let it cure, then scuff it lightly.")
            : null;
    }
}
