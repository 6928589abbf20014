namespace Pipeline.Scheduling;

/// <summary>
/// Puts tasks in one after another, each as early as waits and places allow (the serial scheme), forwards or backwards.
/// </summary>
internal sealed class ListSchedule
{
    private readonly Tasks tasks;
    private readonly (int Task, long Lag)[][] before;
    private readonly (int Task, long Lag)[][] after;
    private readonly (int Place, int Amount)[][] demands;
    private int[][] used;

    public ListSchedule(Tasks tasks)
    {
        this.tasks = tasks;
        before = [.. Enumerable.Range(0, tasks.Count).Select(i => tasks.Arcs.Where(arc => arc.To == i).Select(arc => (arc.From, arc.Lag)).ToArray())];
        // seen from the end, a task starts where it finishes
        after = [.. Enumerable.Range(0, tasks.Count).Select(i => tasks.Arcs.Where(arc => arc.From == i)
            .Select(arc => (arc.To, arc.Lag - tasks.Duration[i] + tasks.Duration[arc.To])).ToArray())];
        demands = [.. tasks.Demand.Select(d => Enumerable.Range(0, d.Length).Where(r => d[r] > 0).Select(r => (r, d[r])).ToArray())];
        used = [.. tasks.Capacity.Select(_ => new int[1024])];
    }

    /// <summary>Schedules made.</summary>
    public long Work { get; private set; }

    /// <summary>Earliest starts in the order of the list.</summary>
    public long Forward(int[] list, long[] starts) => Fill(list, starts, before);

    /// <summary>The same from the other end: the starts count from the end of everything to a task's finish.</summary>
    public long Backward(int[] list, long[] starts) => Fill(list, starts, after);

    private long Fill(int[] list, long[] starts, (int Task, long Lag)[][] arcs)
    {
        Work++;
        foreach (var place in used)
            Array.Clear(place);
        long finish = 0;
        foreach (var i in list)
        {
            long start = 0;
            foreach (var (task, lag) in arcs[i])
                start = Math.Max(start, starts[task] + lag);
            start = Fit(i, start);
            starts[i] = start;
            finish = Math.Max(finish, start + tasks.Duration[i]);
        }

        return finish;
    }

    private long Fit(int i, long start)
    {
        var duration = tasks.Duration[i];
        if (demands[i].Length == 0 || duration == 0)
            return start;
        var t = start;
        Reach(start + duration);
        while (t < start + duration)
        {
            if (HasRoom(i, t))
            {
                t++;
                continue;
            }

            start = ++t;
            Reach(start + duration);
        }

        foreach (var (place, amount) in demands[i])
        {
            var row = used[place];
            for (t = start; t < start + duration; t++)
                row[t] += amount;
        }

        return start;
    }

    private bool HasRoom(int i, long t)
    {
        foreach (var (place, amount) in demands[i])
        {
            if (used[place][t] + amount > tasks.Capacity[place])
                return false;
        }

        return true;
    }

    private void Reach(long time)
    {
        if (used.Length == 0 || time < used[0].Length)
            return;
        for (var r = 0; r < used.Length; r++)
            Array.Resize(ref used[r], (int)Math.Max(time + 1, used[r].Length * 2));
    }
}
