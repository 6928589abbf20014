using Pipeline.Abstractions;

namespace Pipeline.Plugins.Varnish.Rules;

/// <summary>A piece that is picked up again and again has bare paint.</summary>
public sealed class HandledWithoutVarnish : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A piece that is handled in play has varnish over its colours.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> JudgeRoute(WalkedSteps route)
    {
        if (!route.Model.IsHandled || route.Moments.IsEmpty)
            yield break;
        var end = route.Moments[^1];
        Moment? lastCoat = null;
        foreach (var moment in route.Moments)
        {
            if (moment.Step.Coat() is not null)
                lastCoat = moment;
        }

        foreach (var area in route.Model.Areas)
        {
            // a rim or a touch-up over varnish has it under its edges; paste, powder and tufts take none
            var surface = end.After[area.Name];
            if (surface.IsHidden || surface.Has(LayerRole.Varnish) || !surface.Has(LayerRole.Colour))
                continue;
            if (surface.Top is { Role: LayerRole.Powder or LayerRole.Scatter or LayerRole.Texture })
                continue;
            yield return lastCoat!.Says(
                Level.Note,
                area.Name,
                "{areas} is handled in play and has no varnish over the paint: its edges wear in a few games.",
                "End with a gloss varnish for wear, and a matt one over it if it should be dull.");
        }
    }
}
