using Pipeline.Abstractions;

namespace Pipeline.Plugins.Weathering.Rules;

/// <summary>An effect cleaned back after it has set.</summary>
public sealed class EffectHasSet : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "An enamel effect is cleaned back while it can still be moved.";

    // common practice: after a day not even fresh thinner moves it
    private static readonly Drying Hopeless = Drying.Hours(24);

    /// <inheritdoc/>
    public override StepKind? OnlyKind => StepKind.Removal;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        if (moment.Step.First<Deed.CleanBack>() is not { Of: null })
            yield break;
        foreach (var area in moment.Step.Areas)
        {
            if (moment.Before[area].Top is not { } effect || !effect.IsSpiritEffect() || effect.Family?.OpenTime is not { } open || !(open < Hopeless))
                continue;
            yield return moment.WaitsSince(
                effect, default, "cleaned back", area, $"{effect.Name} has set and no longer wipes off.", "Lay it on a shorter stretch and clean back sooner.") with
            {
                Span = new Span.AtMost(open, Hopeless),
            };
        }
    }
}
