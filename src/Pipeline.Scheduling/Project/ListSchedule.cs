namespace Pipeline.Scheduling;

/// <summary>
/// Puts tasks in one after another, each as early as waits and places allow (the serial scheme), forwards or backwards.
/// </summary>
internal sealed class ListSchedule : IListScheme
{
    private readonly Tasks tasks;
    private readonly (int Task, long Lag)[][] before;
    private readonly (int Task, long Lag)[][] after;
    private readonly Room room;
    private long placed;

    public ListSchedule(Tasks tasks)
    {
        this.tasks = tasks;
        before = [.. Enumerable.Range(0, tasks.Count).Select(i => tasks.Net.In[i].Select(arc => (arc.From, arc.Lag)).ToArray())];
        // seen from the end, a task starts where it finishes
        after = [.. Enumerable.Range(0, tasks.Count).Select(i => tasks.Net.Out[i]
            .Select(arc => (arc.To, arc.Lag - tasks.Duration[i] + tasks.Duration[arc.To])).ToArray())];
        room = new Room(tasks);
    }

    public long Work => placed + room.Looks;

    public long? Forward(int[] list, long[] starts) => Fill(list, starts, before);

    public long? Backward(int[] list, long[] starts) => Fill(list, starts, after);

    private long Fill(int[] list, long[] starts, (int Task, long Lag)[][] arcs)
    {
        placed += list.Length;
        room.Clear();
        long finish = 0;
        foreach (var i in list)
        {
            long start = 0;
            foreach (var (task, lag) in arcs[i])
                start = Math.Max(start, starts[task] + lag);
            start = room.Earliest(i, start);
            room.Take(i, start);
            starts[i] = start;
            finish = Math.Max(finish, start + tasks.Duration[i]);
        }

        return finish;
    }
}
