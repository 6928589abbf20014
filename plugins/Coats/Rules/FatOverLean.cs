using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>A quick water-based skin over a film of enamel or oil that still moves.</summary>
public sealed class FatOverLean : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "A water-based coat waits until the enamel or oil under it has cured, and over oil a varnish parts them.";

    /// <inheritdoc/>
    protected override bool LooksAt(Layer coat) => !coat.IsHot() && !coat.IsAlcohol() && !coat.IsWetInWet;

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface) =>
        surface.Top is { } top && moment.ConcernOf(coat, top) == Concern.FatOverLean && moment.Pair(coat, top) is { WhenCured: not Bearing.Never }
            ? moment.WaitsFor(top, DryingState.Cured, area, $"{coat.Name} skins over {top.Name} while that still moves, and cracks.", "Let it cure, then scuff it lightly.")
            : null;

    private protected override Verdict? Besides(Moment moment, Layer coat, string area, Surface surface) =>
        surface.Top is { } top && !top.IsSpiritEffect() && moment.Pair(coat, top) is { WhenCured: >= Bearing.Barrier } pair && !IsToldElsewhere(coat, top, pair)
            ? moment.Refusal(coat, top, pair, area)
            : null;

    // thinners that dissolve what lies under them, and bare metal, have rules of their own
    private static bool IsToldElsewhere(Layer coat, Layer top, CoatOver pair) =>
        pair.WhenCured == Bearing.Barrier && ((coat.IsSpirit() && (coat.IsSpiritEffect() || pair.WhenDry != Bearing.Never)) || (top.IsAlcohol() && top.IsMetallic));
}
