using Pipeline.Abstractions;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>How long what a step leaves takes to reach a state, by itself, at the bench.</summary>
internal static class Settling
{
    /// <summary>Minutes from the finish of a step until all its layers have reached a state; zero if nothing dries. For handling, joints and damp count too.</summary>
    public static double Minutes(Step step, DryingState state, BenchClimate climate, Pace pace)
    {
        double longest = 0;
        foreach (var deed in step.Deeds)
        {
            var (time, carrier) = deed switch
            {
                Deed.Lay lay => (lay.Layer.TimeTo(state), lay.Layer.Family?.Carrier ?? Carrier.None),
                Deed.Prepare prepare when state == DryingState.Handleable => (prepare.Settles, prepare.Carrier),
                Deed.Join join when state == DryingState.Handleable => (join.Settles, join.Carrier),
                Deed.Strip strip when state == DryingState.Handleable => (strip.Settles, strip.Dissolves),
                _ => (null, Carrier.None),
            };
            if (time is { } range)
                longest = Math.Max(longest, Minutes(range, carrier, climate, pace));
        }

        return longest;
    }

    /// <summary>
    /// Minutes from the finish of a step until its piece is ready for what it is wanted for: joints and the like set, and coats handleable
    /// or cured.
    /// </summary>
    public static double UntilReady(Step step, Model model, BenchClimate climate, Pace pace) => Math.Max(
        Minutes(step, DryingState.Handleable, climate, pace),
        model.ReadyAt == DryingState.Handleable ? 0 : Minutes(step, model.ReadyAt, climate, pace));

    /// <summary>The steps a model is ready after: those that nothing follows, and those whose layers are on top at the end.</summary>
    public static IEnumerable<int> Last(WalkedRoute route)
    {
        var last = Enumerable.Range(0, route.Route.Steps.Count).Except(route.Order.Select(order => order.Earlier)).ToHashSet();
        if (!route.Moments.IsEmpty)
        {
            var end = route.Moments[^1].After;
            last.UnionWith(end.Areas.Select(area => end[area].Top?.Step ?? -1).Where(step => step >= 0));
        }

        return last.Order();
    }

    /// <summary>A range at the bench, to its comfortable end or to the low figure.</summary>
    public static double Minutes(DryingRange range, Carrier carrier, BenchClimate climate, Pace pace) =>
        (pace == Pace.Brisk ? range.Low : range.Comfortable).Minutes * (DryingFactor.For(carrier, climate, range.Comfortable) ?? 1);
}
