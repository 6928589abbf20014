using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>A coat on one that has not dried enough.</summary>
public sealed class RecoatTooSoon : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "A coat waits until the one under it can be coated.";

    /// <inheritdoc/>
    public override string Source => "common practice; the recoat window of enamels published in a refinishing guide on lifting";

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        if (surface.Top is not { } top || coat.Technique is Technique.DryBrush or Technique.Sponge)
            return null;
        if (coat.IsWetInWet)
            return top.Family?.OpenTime is { } open ? StillOpen(moment, top, open, area, coat) : null;
        if (moment.ConcernOf(coat, top) != Concern.Recoat || top.TimeTo(DryingState.Recoatable) is not { } time)
            return null;
        var wait = moment.WaitsSince(
            top,
            time,
            "recoatable",
            area,
            coat.Role == LayerRole.Powder ? $"{coat.Name} put on sooner sticks to {top.Name} in blotches." : $"{coat.Name} laid sooner sags, lifts or wrinkles {top.Name}.",
            "Wait, or do another piece first.");
        if (top.Family?.RecoatOpen is { } within)
            wait = wait with { Span = new Span.WithinOrAfter(within, time) };
        // an effect straight on enamel or oil is wrong at any age
        return coat.IsSpiritEffect() && top.IsSpirit() ? wait with { GivesWay = true } : wait;
    }

    private static Verdict StillOpen(Moment moment, Layer top, Drying open, string area, Layer coat) =>
        moment.WaitsSince(
            top, default, "worked wet-in-wet", area, $"{top.Name} has begun to set and no longer takes {coat.Name} wet-in-wet.",
            "Work sooner, or let it dry and lay the coat over it.") with
        {
            Span = new Span.AtMost(open),
        };
}
