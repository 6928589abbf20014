using Pipeline.Abstractions;

namespace Pipeline.Plugins.Varnish.Rules;

/// <summary>The last varnish over colour that is only dry on top.</summary>
public sealed class VarnishTooSoon : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "The colours are dry through before the last varnish.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> JudgeRoute(WalkedSteps route)
    {
        var finals = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var moment in route.Moments)
        {
            if (moment.Step.Coat() is null)
                continue;
            foreach (var area in moment.Reached())
                finals[area] = moment.Step.Index;
        }

        foreach (var moment in route.Moments)
        {
            if (moment.Step.Coat() is not { Role: LayerRole.Varnish } varnish)
                continue;
            foreach (var area in moment.Reached())
            {
                if (finals[area] != moment.Step.Index || moment.Before[area].Top is not { Role: LayerRole.Colour } top || moment.ConcernOf(varnish, top) != Concern.Recoat)
                    continue;
                if (moment.WaitsFor(top, DryingState.Handleable, area, $"{top.Name} is not dry through: the varnish traps what is still in it.", "Wait until it can be handled.") is { } wait)
                    yield return wait with { Gravest = Level.Warning, GivesWay = true };
            }
        }
    }
}
