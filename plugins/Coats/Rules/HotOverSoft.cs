using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>Strong solvent over a softer coat that has not hardened.</summary>
public sealed class HotOverSoft : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "A hot coat waits until the softer one under it can bear it.";

    /// <inheritdoc/>
    public override string Source => "common practice; over enamel published in a refinishing guide on lifting";

    /// <inheritdoc/>
    protected override bool LooksAt(Layer coat) => coat.IsHot() || coat.IsAlcohol();

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        if (surface.Top is not { } top)
            return null;
        if (Concerns.Of(coat, top) == Concern.HotOverSoft)
            return Wait(moment, coat, top, DryingState.Cured, area);
        return coat.IsHot() && top.IsWaterborne() && Wait(moment, coat, top, DryingState.MaskSafe, area) is { } hard
            ? hard with { Gravest = Level.Warning }
            : null;
    }

    private static Verdict.Needs? Wait(Moment moment, Layer coat, Layer top, DryingState state, string area) => moment.WaitsFor(
        top, state, area, $"The strong thinner of {coat.Name} wrinkles {top.Name} while it is soft.",
        "Wait, or part the two with a barrier varnish and mist the first coats.");
}
