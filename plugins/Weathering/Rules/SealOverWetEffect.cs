using Pipeline.Abstractions;

namespace Pipeline.Plugins.Weathering.Rules;

/// <summary>Varnish or paint over an effect whose solvent is still in it.</summary>
public sealed class SealOverWetEffect : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "An effect has lost its solvent before anything seals it in.";

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        return surface.Top is { } top && moment.ConcernOf(coat, top) == Concern.SealOverEffect
            ? moment.WaitsFor(top, DryingState.Cured, area, $"Solvent of {top.Name} shut in under {coat.Name} fogs, softens or cracks it.", "Wait until there is no smell and no wet shine.")
            : null;
    }
}
