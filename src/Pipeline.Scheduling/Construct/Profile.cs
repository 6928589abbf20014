namespace Pipeline.Scheduling;

/// <summary>How full a place is over time: a step function.</summary>
internal sealed class Profile(int capacity)
{
    // Level from each time on, up to the next; the first is from the beginning of time.
    private readonly List<long> times = [long.MinValue];
    private readonly List<long> levels = [0];

    /// <summary>Adds an amount (or takes it away, if negative) from a time up to another.</summary>
    public void Add(long from, long to, long amount)
    {
        if (to <= from || amount == 0)
            return;
        var first = Cut(from);
        var last = Cut(to);
        for (var i = first; i < last; i++)
            levels[i] += amount;
        Merge(last);
        Merge(first);
    }

    /// <summary>
    /// The earliest time from which some units fit, one starting every <paramref name="step"/> ticks and each taking
    /// <paramref name="amount"/> for <paramref name="length"/> ticks. <see cref="long.MaxValue"/> if they never do.
    /// </summary>
    public long EarliestFit(long start, int units, long step, long length, long amount)
    {
        if (length <= 0 || amount == 0)
            return start;
        if (Most(units, step, length) * amount > capacity)
            return long.MaxValue;
        while (true)
        {
            var clash = Clash(start, units, step, length, amount);
            if (clash < 0)
                return start;
            if (clash + 1 >= times.Count)
                return long.MaxValue;
            // The own usage at that distance from the start stays the same until the level there falls.
            start += times[clash + 1] - Math.Max(times[clash], clashAt);
        }
    }

    private long clashAt;

    private static long Most(int units, long step, long length) => step == 0 ? units : Math.Min(units, (length + step - 1) / step);

    // Index of the stretch in which there is too little room, or −1; the moment is left in clashAt.
    private int Clash(long start, int units, long step, long length, long amount)
    {
        var end = start + ((units - 1) * step) + length;
        var i = Index(start);
        var most = Most(units, step, length) * amount;
        for (; i < times.Count && times[i] < end; i++)
        {
            if (levels[i] + most <= capacity)
                continue;
            var from = Math.Max(times[i], start);
            var to = Math.Min(i + 1 < times.Count ? times[i + 1] : long.MaxValue, end);
            if (levels[i] + (Own(from - start, units, step, length) * amount) > capacity)
            {
                clashAt = from;
                return i;
            }

            if (step == 0)
                continue;
            // Own usage only grows where a unit starts.
            for (var k = ((from - start) / step) + 1; k < units && start + (k * step) < to; k++)
            {
                if (levels[i] + (Own(k * step, units, step, length) * amount) > capacity)
                {
                    clashAt = start + (k * step);
                    return i;
                }
            }
        }

        return -1;
    }

    // Units under way at a distance from the start of the first.
    private static long Own(long at, int units, long step, long length)
    {
        if (step == 0)
            return at < length ? units : 0;
        var started = Math.Min(units, (at / step) + 1);
        var finished = at < length ? 0 : Math.Min(units, ((at - length) / step) + 1);
        return started - finished;
    }

    private int Index(long time)
    {
        var i = times.BinarySearch(time);
        return i >= 0 ? i : ~i - 1;
    }

    private int Cut(long time)
    {
        var i = times.BinarySearch(time);
        if (i >= 0)
            return i;
        times.Insert(~i, time);
        levels.Insert(~i, levels[~i - 1]);
        return ~i;
    }

    private void Merge(int i)
    {
        if (i > 0 && i < times.Count && levels[i] == levels[i - 1])
        {
            times.RemoveAt(i);
            levels.RemoveAt(i);
        }
    }
}
