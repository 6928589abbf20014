namespace Pipeline.Scheduling;

/// <summary>
/// Schedules in which nothing starts sooner than in an earlier one, and what no longer fits where it was goes to the next gap: a change in
/// one place pushes on what it must and leaves the rest alone.
/// </summary>
internal static class KeptStarts
{
    private static readonly double[] PartingWorths = [0.5, 1e9, 0];

    /// <summary>One timetable for each way of parting lots; those that come to nothing are left out.</summary>
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
        // what the earlier schedule does not have comes as soon as what it follows lets it
        var keys = Enumerable.Range(0, net.Count).Select(a => (double)starts.GetValueOrDefault(a, heads.Starts[net.Offset[a]])).ToArray();
        foreach (var worth in PartingWorths)
        {
            if (new Dispatcher(net, components, heads).Fill(new Dispatch(keys, worth)) is { } table)
                yield return table;
        }
    }
}
