using Pipeline.Abstractions;

namespace Pipeline.Plugins.Masking.Rules;

/// <summary>A mask that goes on and never comes off.</summary>
public sealed class MaskLeftOn : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Every mask comes off again, and before the piece is photographed.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> JudgeRoute(WalkedSteps route)
    {
        if (route.Moments.IsEmpty)
            yield break;
        foreach (var moment in route.Moments)
        {
            if (moment.Step.First<Deed.Handle>() is null)
                continue;
            foreach (var area in moment.Step.Areas)
            {
                // one that never comes off is told below
                if (moment.Before[area] is { IsMasked: true, Masks: var on } && OffAfter(route, moment.Step, on[^1].Name) is { } off)
                {
                    yield return moment.Says(
                        Level.Warning, area, $"The mask '{on[^1].Name}' is still on {{areas}} in the picture.", $"Take '{on[^1].Name}' off first.", new Pointer(off.Index, "it comes off here"))
                    .MendedBy(off.IsBeside(moment.Step) ? new Mend.MoveAfter(moment.Step.Place, off.Place) : null);
                }
            }
        }

        var last = route.Moments[^1];
        foreach (var area in last.After.Areas)
        {
            foreach (var mask in last.After[area].Masks)
            {
                yield return route.Moments[mask.Step].Says(
                    Level.Error,
                    area,
                    $"The mask '{mask.Name}' on {{areas}} is never taken off.",
                    $"Add 'unmask: {mask.Name}' once the last coat beside it is touch-dry.")
                .MendedBy(TakeOff(route, mask));
            }
        }
    }

    private static Step? OffAfter(WalkedSteps route, Step from, string mask)
    {
        for (var i = from.Index + 1; i < route.Moments.Count; i++)
        {
            if (route.Moments[i].Step.Deeds.Any(deed => deed is Deed.TakeMaskOff off && off.Mask == mask))
                return route.Moments[i].Step;
        }

        return null;
    }

    // after the last coat that the mask is there for, and before its own areas are painted, in the same route or scheme
    private static Mend? TakeOff(WalkedSteps route, MaskOn mask)
    {
        var on = route.Moments[mask.Step].Step;
        var off = new NewStep("unmask", new Acting.MaskOf(on.Place));
        Step? lastCoat = null;
        for (var i = mask.Step + 1; i < route.Moments.Count; i++)
        {
            var step = route.Moments[i].Step;
            if (step.Coat() is { } coat)
            {
                // nobody takes a mask off beside loose pigment or tufts
                if (coat.Role is LayerRole.Powder or LayerRole.Scatter && lastCoat is not null)
                    break;
                if (step.Areas.All(on.Areas.Contains) || (lastCoat is not null && IsVarnishForAll(route.Moments[i], coat, on)))
                    return step.IsBeside(on) ? new Mend.PutBefore(step.Place, off) : null;
                if (coat.Role is not (LayerRole.Decal or LayerRole.Powder or LayerRole.Scatter))
                    lastCoat = step;
            }
            else if (lastCoat is not null && !lastCoat.IsBeside(on) && step.IsBeside(on) && !IsPaintedFrom(route, i, on.Areas))
            {
                return new Mend.PutBefore(step.Place, off);
            }
        }

        return lastCoat?.IsBeside(on) == true ? new Mend.PutAfter(lastCoat.Place, off) : null;
    }

    // varnish that names what is masked is meant for it, too; unless the mask keeps its shine
    private static bool IsVarnishForAll(Moment moment, Layer coat, Step on) =>
        coat.Role == LayerRole.Varnish
        && moment.Step.Areas.Any(on.Areas.Contains)
        && on.Areas.All(area => moment.Before[area].Sheen <= coat.Sheen);

    private static bool IsPaintedFrom(WalkedSteps route, int from, Sequence<string> masked)
    {
        for (var i = from; i < route.Moments.Count; i++)
        {
            if (route.Moments[i].Step.Coat() is not null && !route.Moments[i].Step.Areas.All(masked.Contains))
                return true;
        }

        return false;
    }
}
