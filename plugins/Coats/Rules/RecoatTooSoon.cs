using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>A coat on one that has not dried enough.</summary>
public sealed class RecoatTooSoon : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A coat waits until the one under it can be coated.";

    /// <inheritdoc/>
    public override string Source => "common practice; the recoat window of enamels published in a refinishing guide on lifting";

    /// <inheritdoc/>
    public override StepKind? OnlyKind => StepKind.Coat;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        if (moment.Step.Kind != StepKind.Coat || moment.Step.Coat() is not { } coat)
            yield break;
        foreach (var area in moment.Reached())
        {
            if (moment.Before[area].Top is not { } top || coat.Technique is Technique.DryBrush or Technique.Sponge)
                continue;
            if (coat.IsWetInWet)
            {
                if (top.Family?.OpenTime is { } open)
                    yield return StillOpen(moment, top, open, area, coat);
                continue;
            }

            if (Concerns.Of(coat, top) != Concern.Recoat || top.TimeTo(DryingState.Recoatable) is not { } time)
                continue;
            var wait = moment.WaitsSince(
                top, time, "recoatable", area, $"{coat.Name} laid sooner sags, lifts or wrinkles {top.Name}.", "Wait, or do another piece first.");
            yield return top.Family?.RecoatOpen is { } within ? wait with { Span = new Span.WithinOrAfter(within, time) } : wait;
        }
    }

    private static Verdict StillOpen(Moment moment, Layer top, Drying open, string area, Layer coat) =>
        moment.WaitsSince(
            top, default, "worked wet-in-wet", area, $"{top.Name} has begun to set and no longer takes {coat.Name} wet-in-wet.",
            "Work sooner, or let it dry and lay the coat over it.") with
        {
            Span = new Span.AtMost(open),
        };
}
