namespace Pipeline.Scheduling;

/// <summary>
/// A pure project: no hands, one unit each, only places and waits between starts, and the finish is what counts.
/// Such a problem is searched by methods of its own.
/// </summary>
internal sealed class Tasks
{
    private Tasks(Net net)
    {
        Net = net;
        Count = net.Count;
        Duration = [.. net.Duration];
        Capacity = [.. net.Problem.Places.Select(p => p.Capacity)];
        Demand = new int[Count][];
        for (var a = 0; a < Count; a++)
        {
            Demand[a] = new int[Capacity.Length];
            foreach (var stay in net.Stays[a])
                Demand[a][stay.Place] = stay.Amount;
        }

        Arcs = [.. net.Out.SelectMany(arcs => arcs)];
        Horizon = Arcs.Sum(arc => Math.Abs(arc.Lag)) + Duration.Sum() + net.Problem.Activities.Select(a => a.NotBefore).DefaultIfEmpty(0).Max();
    }

    public Net Net { get; }

    public int Count { get; }

    public long[] Duration { get; }

    public int[] Capacity { get; }

    /// <summary>Per task and place.</summary>
    public int[][] Demand { get; }

    public Arc[] Arcs { get; }

    /// <summary>If there is a schedule, there is one that finishes by then.</summary>
    public long Horizon { get; }

    /// <summary>Whether lists of tasks can be put in one after another: everything waits for finishes only, and all may start at once.</summary>
    public bool AreListable => Arcs.All(arc => arc.Lag >= Duration[arc.From] && !arc.IsGreatest) && Net.Problem.Activities.All(a => a.NotBefore <= 0);

    /// <summary>The project in a problem, or null if it is none.</summary>
    public static Tasks? In(Net net)
    {
        var isProject = net.Count > 0
            && net.Problem.Dues.IsEmpty
            && !net.Problem.Aims.IsEmpty
            && net.Problem.Aims[0] == Aim.FinishSoon
            && net.Problem.Waits.All(w => w.HoldWeight == 0)
            && net.Problem.Activities.All(a =>
                !a.IsAttended && a.Units == 1 && a.Past.IsEmpty && a.PinnedStart is null && a.NotBefore >= 0
                && a.Places.All(u => u.Afterwards == 0))
            && !net.Stays.Any(stays => stays.Any(stay => stay.MayOverlap));
        return isProject ? new Tasks(net) : null;
    }

    /// <summary>The finish if tasks start then.</summary>
    public long Finish(long[] starts)
    {
        long finish = 0;
        for (var i = 0; i < Count; i++)
            finish = Math.Max(finish, starts[i] + Duration[i]);
        return finish;
    }

    /// <summary>No schedule finishes before all work of some place is done.</summary>
    public long ContentBound()
    {
        long bound = 0;
        for (var r = 0; r < Capacity.Length; r++)
        {
            long content = 0;
            for (var i = 0; i < Count; i++)
                content += Duration[i] * Demand[i][r];
            if (Capacity[r] > 0)
                bound = Math.Max(bound, (content + Capacity[r] - 1) / Capacity[r]);
        }

        return bound;
    }

    /// <summary>A timetable with the tasks at their starts.</summary>
    public Timetable ToTimetable(long[] starts)
    {
        var table = new Timetable(Net);
        foreach (var i in Enumerable.Range(0, Count).OrderBy(i => starts[i]).ThenBy(i => i))
            table.Put(i, 0, 1, new Spot(-1, -1, -1, -1, starts[i], 0, starts[i], starts[i]));
        return table;
    }
}
