using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>An area is to be painted after a join that hides it.</summary>
public sealed class HiddenBeforePainted : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "An area is painted before a join hides it.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> JudgeRoute(WalkedSteps route)
    {
        var told = new HashSet<string>(StringComparer.Ordinal);
        foreach (var moment in route.Moments)
        {
            if (moment.Step.Coat() is not { Role: not (LayerRole.Powder or LayerRole.Scatter) } coat)
                continue;
            foreach (var area in moment.Step.Areas)
            {
                if (!moment.Before[area].IsHidden || IsSwept(moment, area, coat) || !told.Add(area))
                    continue;
                var later = LaterCoats(route, moment.Step.Index, area);
                yield return moment.Says(
                    Level.Error,
                    area,
                    $"{{areas}} cannot be reached any more: the join has hidden it before {coat.Name} goes on"
                        + (later == 0 ? "." : FormattableString.Invariant($", and {later} more after it.")),
                    "Paint {areas} as a sub-assembly: move its steps before the join, or the join after them.",
                    Join(moment, area))
                .MendedBy(BeforeJoin(moment));
            }
        }
    }

    // "all" names what is hidden too; that is meant for the rest, unless the hidden area never got its colour
    private static bool IsSwept(Moment moment, string area, Layer coat)
    {
        var part = moment.Model.PartOf(area);
        var anyOpen = false;
        foreach (var other in moment.Model.Areas)
        {
            if (other.Part == part && !moment.Step.Areas.Contains(other.Name))
                return false;
            anyOpen |= moment.Step.Areas.Contains(other.Name) && !moment.Before[other.Name].IsHidden;
        }

        return anyOpen && (coat.Role != LayerRole.Colour || moment.Before[area].Has(LayerRole.Colour));
    }

    private static int LaterCoats(WalkedSteps route, int step, string area)
    {
        var count = 0;
        for (var i = step + 1; i < route.Moments.Count; i++)
        {
            if (route.Moments[i].Step.Coat() is { } coat && route.Moments[i].Step.Areas.Contains(area) && !IsSwept(route.Moments[i], area, coat))
                count++;
        }

        return count;
    }

    private static Mend? BeforeJoin(Moment moment)
    {
        if (!moment.Step.Areas.All(area => moment.Before[area].IsHidden))
            return null;
        for (var i = 0; i < moment.Step.Index; i++)
        {
            if (moment.At(i).First<Deed.Join>() is { } join && moment.Step.Areas.Any(area => join.Hides.Contains(area)))
                return new Mend.MoveBefore(moment.Step.Place, moment.At(i).Place);
        }

        return null;
    }

    private static Pointer[] Join(Moment moment, string area)
    {
        for (var i = moment.Step.Index - 1; i >= 0; i--)
        {
            if (moment.At(i).First<Deed.Join>() is { } join && join.Hides.Contains(area))
                return [new Pointer(i, "this join hides it")];
        }

        return [];
    }
}
