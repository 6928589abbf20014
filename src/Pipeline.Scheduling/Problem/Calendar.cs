using System.Collections.Immutable;

namespace Pipeline.Scheduling;

/// <summary>Half-open intervals of ticks, sorted, apart from each other.</summary>
public sealed record Calendar
{
    /// <summary>Takes the intervals in any order; touching ones stay apart (two sittings may follow each other).</summary>
    /// <exception cref="ArgumentException">An interval is empty or two overlap.</exception>
    public Calendar(IEnumerable<Interval> open)
    {
        Open = [.. open.OrderBy(i => i.Start)];
        for (var i = 0; i < Open.Length; i++)
        {
            if (Open[i].End <= Open[i].Start)
                throw new ArgumentException($"Interval {i} is empty.", nameof(open));
            if (i > 0 && Open[i].Start < Open[i - 1].End)
                throw new ArgumentException($"Intervals {i - 1} and {i} overlap.", nameof(open));
        }
    }

    /// <summary>The open intervals in order of time.</summary>
    public ImmutableArray<Interval> Open { get; }
}

/// <summary>From a tick up to, not including, another.</summary>
public readonly record struct Interval(long Start, long End)
{
    /// <summary>Its length in ticks.</summary>
    public long Length => End - Start;
}
