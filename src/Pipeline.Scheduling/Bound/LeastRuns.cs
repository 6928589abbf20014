namespace Pipeline.Scheduling;

/// <summary>In how many runs each activity's units must go at the least.</summary>
internal static class LeastRuns
{
    /// <summary>
    /// A run is no longer than the longest open interval, and than a day may be. Where one pair of hands does everything, a greatest wait limits it too:
    /// what follows on the run's first unit can start only when the whole run is over, and what a run follows on was over
    /// before the run began.
    /// </summary>
    public static long[] Of(Net net)
    {
        var most = MostPerRun(net);
        return [.. Enumerable.Range(0, net.Count).Select(a =>
        {
            var units = net.Units[a] - net.Done[a];
            return most[a] <= 0 || units == 0 ? 1 : Math.Max(1, (units + Math.Min(most[a], units) - 1) / Math.Min(most[a], units));
        })];
    }

    /// <summary>How many units at most go in one run.</summary>
    public static long[] MostPerRun(Net net)
    {
        var most = new long[net.Count];
        for (var a = 0; a < net.Count; a++)
        {
            most[a] = long.MaxValue;
            if (!net.Attended[a] || net.Step[a] == 0)
                continue;
            var longest = net.Workers[a].Select(w => net.MostAtOnce[w]).DefaultIfEmpty(0).Max();
            most[a] = (longest - net[a].SetUp - net[a].PutAway) / net.Step[a];
        }

        if (net.Problem.Workers.Length == 1)
        {
            foreach (var wait in net.Problem.Waits.Where(w => w is { Scope: Scope.UnitByUnit, Greatest: not null, Least: >= 0, FromEdge: Edge.Finish, ToEdge: Edge.Start }))
            {
                if (!net.Attended[wait.From] || !net.Attended[wait.To])
                    continue;
                var between = wait.Greatest!.Value + net[wait.From].Unattended - net[wait.From].PutAway - net[wait.To].SetUp;
                if (net.Step[wait.From] > 0)
                    most[wait.From] = Math.Min(most[wait.From], (between / net.Step[wait.From]) + 1);
                if (net.Step[wait.To] > 0)
                    most[wait.To] = Math.Min(most[wait.To], (between / net.Step[wait.To]) + 1);
            }
        }

        return most;
    }
}
