using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>Strong solvent over a softer coat that has not hardened.</summary>
public sealed class HotOverSoft : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A hot coat waits until the softer one under it can bear it.";

    /// <inheritdoc/>
    public override string Source => "common practice; over enamel published in a refinishing guide on lifting";

    /// <inheritdoc/>
    public override StepKind? OnlyKind => StepKind.Coat;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        if (moment.Step.Kind != StepKind.Coat || moment.Step.Coat() is not { } coat)
            yield break;
        if (!coat.IsHot() && !coat.IsAlcohol())
            yield break;
        foreach (var area in moment.Reached())
        {
            if (moment.Before[area].Top is not { } top)
                continue;
            if (Concerns.Of(coat, top) == Concern.HotOverSoft)
            {
                if (Wait(moment, coat, top, DryingState.Cured, area) is { } cured)
                    yield return cured;
            }
            else if (coat.IsHot() && top.IsWaterborne() && Wait(moment, coat, top, DryingState.MaskSafe, area) is { } hard)
            {
                yield return hard with { Gravest = Level.Warning };
            }
        }
    }

    private static Verdict.Needs? Wait(Moment moment, Layer coat, Layer top, DryingState state, string area) => moment.WaitsFor(
        top, state, area, $"The strong thinner of {coat.Name} wrinkles {top.Name} while it is soft.",
        "Wait, or part the two with a barrier varnish and mist the first coats.");
}
