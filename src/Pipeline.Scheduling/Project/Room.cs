namespace Pipeline.Scheduling;

/// <summary>
/// What is left of every place, tick by tick. The places stand side by side in a word of 64 bits, each with a bit above it that
/// a subtraction borrows if there is too little: one comparison asks them all.
/// </summary>
internal sealed class Room
{
    private readonly long[] duration;
    private readonly int words;
    private readonly ulong[] borrow;
    private readonly ulong[] empty;
    private readonly ulong[] needs;
    private readonly bool[] needsAny;
    private ulong[] left;
    private int ticks;
    private int used;

    public Room(Tasks tasks)
    {
        duration = tasks.Duration;
        int[] widths = [.. tasks.Capacity.Select((capacity, r) => 33 - int.LeadingZeroCount(Math.Max(capacity, tasks.Demand.Max(d => d[r]))))];
        var at = new (int Word, int Bit)[widths.Length];
        int word = 0, bit = 0;
        for (var r = 0; r < at.Length; r++)
        {
            if (bit + widths[r] > 64)
                (word, bit) = (word + 1, 0);
            at[r] = (word, bit);
            bit += widths[r];
        }

        words = word + 1;
        borrow = new ulong[words];
        empty = new ulong[words];
        needs = new ulong[tasks.Count * words];
        needsAny = [.. tasks.Demand.Select((d, i) => tasks.Duration[i] > 0 && d.Any(amount => amount > 0))];
        for (var r = 0; r < at.Length; r++)
        {
            borrow[at[r].Word] |= 1UL << (at[r].Bit + widths[r] - 1);
            empty[at[r].Word] |= (ulong)tasks.Capacity[r] << at[r].Bit;
            for (var i = 0; i < tasks.Count; i++)
                needs[(i * words) + at[r].Word] |= (ulong)tasks.Demand[i][r] << at[r].Bit;
        }

        for (var w = 0; w < words; w++)
            empty[w] |= borrow[w];
        left = new ulong[256 * words];
        ticks = 256;
        used = ticks;
        Clear();
    }

    /// <summary>Ticks looked at so far.</summary>
    public long Looks { get; private set; }

    /// <summary>Everything is free again.</summary>
    public void Clear()
    {
        if (words == 1)
            Array.Fill(left, empty[0], 0, used);
        else
            FillWords(0, used);
        used = 0;
    }

    /// <summary>The earliest start not before <paramref name="start"/> with room for the task all through.</summary>
    public long Earliest(int task, long start)
    {
        if (!needsAny[task])
            return start;
        var length = (int)duration[task];
        return words == 1 ? EarliestOfOne(task, (int)start, length) : EarliestOfMore(task, (int)start, length);
    }

    /// <summary>Takes the room that a task needs from its start; there must be so much.</summary>
    public void Take(int task, long start)
    {
        if (!needsAny[task])
            return;
        var end = start + duration[task];
        Reach((int)end);
        for (var w = 0; w < words; w++)
        {
            var need = needs[(task * words) + w];
            for (var t = start; t < end; t++)
                left[(t * words) + w] -= need;
        }

        used = Math.Max(used, (int)end);
    }

    /// <summary>Gives back what the task took.</summary>
    public void GiveBack(int task, long start)
    {
        if (!needsAny[task])
            return;
        for (var w = 0; w < words; w++)
        {
            var need = needs[(task * words) + w];
            for (var t = start; t < start + duration[task]; t++)
                left[(t * words) + w] += need;
        }
    }

    // From the end of the stretch backwards: what does not fit there moves the start behind it.
    private int EarliestOfOne(int task, int start, int length)
    {
        Reach(start + length);
        var need = needs[task];
        var over = borrow[0];
        var known = start;
        for (var t = start + length - 1; t >= known; t--)
        {
            Looks++;
            if (((left[t] - need) & over) == over)
                continue;
            known = start + length;
            start = t + 1;
            Reach(start + length);
            t = start + length;
        }

        return start;
    }

    private int EarliestOfMore(int task, int start, int length)
    {
        Reach(start + length);
        for (var t = start + length - 1; t >= start; t--)
        {
            Looks++;
            if (Fits(task, t))
                continue;
            start = t + 1;
            Reach(start + length);
            t = start + length;
        }

        return start;
    }

    private bool Fits(int task, int tick)
    {
        for (var w = 0; w < words; w++)
        {
            if (((left[(tick * words) + w] - needs[(task * words) + w]) & borrow[w]) != borrow[w])
                return false;
        }

        return true;
    }

    private void Reach(int end)
    {
        if (end <= ticks)
            return;
        var grown = Math.Max(end, 2 * ticks);
        Array.Resize(ref left, grown * words);
        FillWords(ticks, grown);
        ticks = grown;
    }

    private void FillWords(int from, int to)
    {
        for (var t = from; t < to; t++)
        {
            for (var w = 0; w < words; w++)
                left[(t * words) + w] = empty[w];
        }
    }
}
