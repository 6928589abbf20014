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
        // over a chipping medium it is wrong at any age, and another rule says so
        if (surface.Top is not { } top || top.Technique == Technique.ChippingMedium || moment.Pair(coat, top) is not { } pair)
            return null;
        if (moment.ConcernOf(coat, top) == Concern.HotOverSoft)
            return pair.WhenCured == Bearing.Never ? null : Wait(moment, coat, top, DryingState.Cured, area);
        return !coat.IsDabbed() && pair is { WhenDry: Bearing.Mist, From: > DryingState.Recoatable } && Wait(moment, coat, top, pair.From, area) is { } hard
            ? hard with { Gravest = Level.Warning }
            : null;
    }

    // laid wet is another rule's, and a thin effect counts as cured once it is dry
    private protected override Verdict? Besides(Moment moment, Layer coat, string area, Surface surface) =>
        surface.Top is { } top && !coat.IsWetInWet && !top.IsSpiritEffect()
        && moment.Pair(coat, top) is { WhenCured: >= Bearing.Barrier } pair && (pair.WhenCured == Bearing.Never || !coat.IsWet())
            ? moment.Refusal(coat, top, pair, area)
            : null;

    private static Verdict.Needs? Wait(Moment moment, Layer coat, Layer top, DryingState state, string area) => moment.WaitsFor(
        top, state, area, $"The strong thinner of {coat.Name} wrinkles {top.Name} while it is soft.",
        "Wait, or part the two with a barrier varnish and mist the first coats.");
}
