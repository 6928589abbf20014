namespace Pipeline.Scheduling;

/// <summary>One open interval of one worker and what is in it.</summary>
internal sealed class Sitting(Interval open, Workday workday)
{
    public readonly long Start = open.Start;
    public readonly long End = open.End;

    /// <summary>The day that it belongs to.</summary>
    public readonly Workday Workday = workday;

    /// <summary>In order of start.</summary>
    public readonly List<Placed> Blocks = [];

    private long used;

    /// <summary>Ticks at the end kept for close-downs.</summary>
    public long Tail { get; private set; }

    /// <summary>Attended ticks that are left.</summary>
    public long Free => Math.Min(End - Start - used - Tail, Workday.Free);

    /// <summary>Counts so many more attended ticks, or fewer.</summary>
    public void Use(long ticks)
    {
        used += ticks;
        Workday.Free -= ticks;
    }

    /// <summary>Keeps so many more ticks at the end for close-downs, or fewer.</summary>
    public void KeepForTail(long ticks)
    {
        Tail += ticks;
        Workday.Free -= ticks;
    }

    public long LastEnd => Blocks.Count == 0 ? Start : Math.Max(Start, Blocks[^1].End);
}

/// <summary>What is left to be done in one day of one worker, in all its open intervals together.</summary>
/// <param name="first">The first of the intervals.</param>
/// <param name="last">The last of them.</param>
/// <param name="most">Cap on attended ticks.</param>
internal sealed class Workday(int first, int last, long most)
{
    public readonly int First = first;
    public readonly int Last = last;

    /// <summary>Attended ticks that the cap leaves, those kept for close-downs taken off.</summary>
    public long Free = most;
}
