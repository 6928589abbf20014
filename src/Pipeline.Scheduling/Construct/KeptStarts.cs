namespace Pipeline.Scheduling;

/// <summary>
/// Schedules in which nothing starts sooner than in an earlier one, and what no longer fits where it was goes to the next gap: a change in
/// one place pushes on what it must and leaves the rest alone.
/// </summary>
internal static class KeptStarts
{
    private static readonly double[] PartingWorths = [0.5, 1e9, 0];

    /// <summary>
    /// Timetables with the lots parted as they were, units that are new joined to the last run of their lot or not, and one for each other way of parting them; those that come to nothing are left out.
    /// </summary>
    /// <param name="problem">The problem as it is now.</param>
    /// <param name="keep">The earlier schedule.</param>
    public static IEnumerable<Timetable> Of(Problem problem, Keep keep)
    {
        var starts = keep.Earlier.Runs.GroupBy(run => run.Activity).ToDictionary(mine => mine.Key, mine => mine.Min(run => run.Start));
        var held = problem with
        {
            Activities = [.. problem.Activities.Select((activity, a) => activity with { NotBefore = Math.Max(activity.NotBefore, starts.GetValueOrDefault(a, long.MinValue)) })],
        };
        var net = new Net(held);
        var components = new Components(net);
        var heads = Heads.Of(net, components, hours: null);
        if (heads.Obstacle is not null)
            yield break;
        var dispatcher = new Dispatcher(net, components, heads);
        var known = keep.KnownUnits();
        var hasNew = known.Any(lot => lot.Value < net.Units[lot.Key]);
        foreach (var joined in hasNew ? new[] { true, false } : [false])
        {
            if (AsTheyWere(net, dispatcher, heads, keep, joined ? known : []) is { } same)
                yield return same;
        }

        // what the earlier schedule does not have comes as soon as what it follows lets it
        var keys = Enumerable.Range(0, net.Count).Select(a => (double)starts.GetValueOrDefault(a, heads.Starts[net.Offset[a]])).ToArray();
        foreach (var worth in PartingWorths)
        {
            if (dispatcher.Fill(new Dispatch(keys, worth)) is { } table)
                yield return table;
        }
    }

    // Run after run of the earlier schedule, each when it was or in the next gap; what cannot go in like that comes last. The run that ends
    // where units that are new begin takes them, too.
    private static Timetable? AsTheyWere(Net net, Dispatcher dispatcher, Heads heads, Keep keep, Dictionary<int, int> joinedAt)
    {
        var table = new Timetable(net);
        var fitting = new Fitting(table);
        if (!dispatcher.PutPinned(table, fitting))
            return null;
        foreach (var run in keep.Earlier.Runs.OrderBy(run => run.Start))
        {
            var (a, first) = (run.Activity, run.FirstUnit);
            var takesAll = net.Whole[a] || joinedAt.GetValueOrDefault(a) == first + run.Units;
            var units = takesAll ? net.Units[a] - first : Math.Min(run.Units, net.Units[a] - first);
            if (first != Placing.NextUnit(table, a) || units < 1 || !Placing.IsReady(table, a, first, units))
                continue;
            var spot = fitting.Earliest(a, first, units, Placing.WorkFrom(table, a, first, units), Math.Max(net[a].NotBefore, run.Start), hands: run.Worker);
            Placing.TryPut(table, a, first, units, spot);
        }

        return dispatcher.Complete(table, new Dispatch([.. Enumerable.Range(0, net.Count).Select(a => (double)heads.Starts[net.Offset[a]])], PartingWorth: 0.5));
    }
}
