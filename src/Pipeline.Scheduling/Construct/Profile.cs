namespace Pipeline.Scheduling;

/// <summary>Units that come to a place one after another.</summary>
/// <param name="Start">When the first comes.</param>
/// <param name="Units">How many.</param>
/// <param name="Step">Ticks from one to the next; zero if they come at once.</param>
/// <param name="Length">Ticks each of them stays.</param>
/// <param name="Amount">What each of them takes.</param>
internal readonly record struct Stream(long Start, int Units, long Step, long Length, long Amount)
{
    /// <summary>When the last has left.</summary>
    public long End => Start + ((Units - 1) * Step) + Length;

    /// <summary>The most that are there at a time.</summary>
    public long Most => Step == 0 ? Units : Math.Min(Units, (Length + Step - 1) / Step);

    /// <summary>The units that are there at a time from the start on: from the first up to, not including, the last.</summary>
    public (int First, int Last) At(long time)
    {
        var at = time - Start;
        if (Step == 0)
            return (0, at < Length ? Units : 0);
        return (at < Length ? 0 : (int)Math.Min(Units, ((at - Length) / Step) + 1), (int)Math.Min(Units, (at / Step) + 1));
    }

    /// <summary>When the next comes after a time; <see cref="long.MaxValue"/> if none does.</summary>
    public long NextAfter(long time)
    {
        if (Step == 0)
            return long.MaxValue;
        var next = ((time - Start) / Step) + 1;
        return next < Units ? Start + (next * Step) : long.MaxValue;
    }
}

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

    /// <summary>The earliest start at or after the stream's from which all of it fits; <see cref="long.MaxValue"/> if it never does.</summary>
    /// <param name="stream">What is to come, taking something for some time.</param>
    /// <param name="others">
    /// Per unit, the stays by which it is there anyway and that the levels have in them; empty if there are none of any unit.
    /// </param>
    public long EarliestFit(Stream stream, ReadOnlySpan<List<(long From, long Until)>> others)
    {
        if (others.IsEmpty && stream.Most * stream.Amount > capacity)
            return long.MaxValue;
        while (Clash(stream, others) is { } clash)
        {
            if (clash.Until == long.MaxValue)
                return long.MaxValue;
            // What comes at that distance from the start stays the same until something else there changes.
            stream = stream with { Start = stream.Start + clash.Until - clash.At };
        }

        return stream.Start;
    }

    /// <summary>When the stream would be too much; null if it fits.</summary>
    public long? Overfilled(Stream stream, ReadOnlySpan<List<(long From, long Until)>> others) => Clash(stream, others)?.At;

    // The first moment with too little room, and until when nothing but the stream changes.
    private (long At, long Until)? Clash(in Stream stream, ReadOnlySpan<List<(long From, long Until)>> others)
    {
        var end = stream.End;
        var most = stream.Most * stream.Amount;
        for (var i = Index(stream.Start); i < times.Count && times[i] < end; i++)
        {
            if (levels[i] + most <= capacity)
                continue;
            var until = i + 1 < times.Count ? times[i + 1] : long.MaxValue;
            var at = Math.Max(times[i], stream.Start);
            while (at < Math.Min(until, end))
            {
                var (first, last) = stream.At(at);
                var next = stream.NextAfter(at);
                if (levels[i] + ((last - first) * stream.Amount) > capacity)
                {
                    var added = last - first;
                    var change = others.IsEmpty ? until : Math.Min(until, Count(others[first..last], at, ref added));
                    // what is full already is not fuller for what adds nothing
                    if (added > 0 && levels[i] + (added * stream.Amount) > capacity)
                        return (at, change);
                    next = Math.Min(next, change);
                }

                at = next;
            }
        }

        return null;
    }

    // Takes off the units that are there anyway; returns when one of them comes or goes next.
    private static long Count(ReadOnlySpan<List<(long From, long Until)>> others, long at, ref int added)
    {
        var change = long.MaxValue;
        foreach (var stays in others)
        {
            var isThere = false;
            foreach (var (from, until) in stays)
            {
                if (until <= at)
                    continue;
                isThere |= from <= at;
                change = Math.Min(change, from <= at ? until : from);
            }

            if (isThere)
                added--;
        }

        return change;
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
