using Pipeline.Abstractions;

namespace Pipeline.Plugins.Weathering.Rules;

/// <summary>An enamel or oil effect on a coat that cannot bear its thinner yet.</summary>
public sealed class EffectTooSoon : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A coat is old enough for thinner and rubbing before an enamel or oil effect goes on it.";

    /// <inheritdoc/>
    public override StepKind? OnlyKind => StepKind.Coat;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        if (moment.Step.Kind != StepKind.Coat || moment.Step.Coat() is not { } coat)
            yield break;
        foreach (var area in moment.Reached())
        {
            if (moment.Before[area].Top is not { } top || Concerns.Of(coat, top) != Concern.ThinnerOnYoung)
                continue;
            if (moment.WaitsFor(top, DryingState.WashSafe, area, $"{top.Name} is too young for the thinner of {coat.Name} and for rubbing.", "Wait, or lay a barrier varnish.") is { } wait)
                yield return wait;
        }
    }
}
