namespace Pipeline.Scheduling;

/// <summary>A list of tasks and when they start.</summary>
internal sealed record Member(int[] List, long[] Starts, long Finish);

/// <summary>
/// Makes a schedule of a list and irons it out: pushed to the right from its finish, those that finish last first, and pulled
/// to the left again in the order in which they then start (forward-backward improvement).
/// </summary>
internal sealed class Ironing(Tasks tasks, TaskOrder order, IListScheme scheme)
{
    private readonly long[] keys = new long[tasks.Count];
    private readonly int[] sorted = new int[tasks.Count];
    private readonly long[] starts = new long[tasks.Count];
    private int[] count = new int[1024];

    /// <summary>The ironed schedule, or null if the list led nowhere.</summary>
    public Member? Of(int[] list)
    {
        if (scheme.Forward(list, starts) is not { } first)
            return null;
        var early = (long[])starts.Clone();
        for (var i = 0; i < tasks.Count; i++)
            keys[i] = -(starts[i] + tasks.Duration[i]);
        Sort(backwards: true);
        if (scheme.Backward(sorted, starts) is { } length)
        {
            for (var i = 0; i < tasks.Count; i++)
                keys[i] = length - starts[i] - tasks.Duration[i];
            Sort(backwards: false);
            if (scheme.Forward(sorted, starts) is { } finish && finish <= first)
                return new Member(ByStart(starts), (long[])starts.Clone(), finish);
        }

        return new Member(ByStart(early), early, first);
    }

    /// <summary>The list in which a schedule starts its tasks.</summary>
    public int[] ByStart(long[] times)
    {
        Array.Copy(times, keys, times.Length);
        Sort(backwards: false);
        return (int[])sorted.Clone();
    }

    // By key, ties in the order that the tasks have to keep, or the reverse of it; counted, or compared where times lie far apart.
    private void Sort(bool backwards)
    {
        var least = keys.Min();
        var range = keys.Max() - least + 2;
        for (var r = 0; r < sorted.Length; r++)
            sorted[r] = order.ByRank[backwards ? sorted.Length - 1 - r : r];
        if (range > 64L * sorted.Length)
        {
            Array.Copy(sorted.OrderBy(i => keys[i]).ToArray(), sorted, sorted.Length);
            return;
        }

        if (range > count.Length)
            count = new int[range];
        Array.Clear(count, 0, (int)range);
        foreach (var key in keys)
            count[key - least + 1]++;
        for (var t = 1; t < range; t++)
            count[t] += count[t - 1];
        for (var r = 0; r < sorted.Length; r++)
        {
            var i = order.ByRank[backwards ? sorted.Length - 1 - r : r];
            sorted[count[keys[i] - least]++] = i;
        }
    }
}
