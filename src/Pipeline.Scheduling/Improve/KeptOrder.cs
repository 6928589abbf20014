namespace Pipeline.Scheduling;

/// <summary>An earlier schedule as the order in which its runs are taken up.</summary>
internal static class KeptOrder
{
    /// <summary>
    /// The runs in the order of the earlier schedule. Where it does not have an activity, or not all its units, that is put in as another
    /// schedule has it, right after what it has to follow.
    /// </summary>
    /// <param name="keep">The earlier schedule.</param>
    /// <param name="other">A whole schedule of the problem as it is now.</param>
    /// <param name="ground">What walks share.</param>
    public static List<Slot> Of(Keep keep, Timetable other, Ground ground)
    {
        var net = ground.Net;
        var earlier = keep.Earlier.Runs.ToLookup(run => run.Activity);
        var starts = new long?[net.Count];
        var runs = new List<(Slot Slot, long Start)>();
        for (var a = 0; a < net.Count; a++)
        {
            var mine = earlier[a].OrderBy(run => run.FirstUnit).ToList();
            // units that are new go with the last
            if (mine.Count > 0)
                mine[^1] = mine[^1] with { Units = net.Units[a] - mine[^1].FirstUnit };
            if (!IsWhole(net, a, mine))
                continue;
            starts[a] = mine[0].Start;
            runs.AddRange(mine.Select(run => (Slot.Of(a, run.FirstUnit, run.Units, run.Worker, run.Start, toolNumber: -1), run.Start)));
        }

        foreach (var run in other.Runs.Where(run => !run.IsPast && starts[run.Activity] is null).OrderBy(run => run.Start))
        {
            var after = net.In[run.Activity].Where(arc => !arc.IsGreatest && starts[arc.From] is not null).Select(arc => starts[arc.From]!.Value + 1).DefaultIfEmpty(0).Max();
            runs.Add((Slot.Of(run.Activity, run.First, run.Units, run.Worker, run.Start, run.ToolNumber), after));
        }

        return InOrder.Of(runs, ground);
    }

    // All units still to do, each once, by somebody who may.
    private static bool IsWhole(Net net, int activity, List<Run> runs)
    {
        var next = net.Done[activity];
        foreach (var run in runs)
        {
            if (run.FirstUnit != next || (net.Attended[activity] ? !net.Workers[activity].Contains(run.Worker) : run.Worker != -1) || (net.Whole[activity] && runs.Count > 1))
                return false;
            next += run.Units;
        }

        return runs.Count > 0 && next == net.Units[activity];
    }
}
