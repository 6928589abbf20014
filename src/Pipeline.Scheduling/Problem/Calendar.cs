using System.Collections.Immutable;

namespace Pipeline.Scheduling;

/// <summary>Half-open intervals of ticks, sorted, apart from each other, and the days to which they belong.</summary>
public sealed record Calendar
{
    /// <summary>Takes the intervals in any order, each as a day of its own; touching ones stay apart (two sittings may follow each other).</summary>
    /// <exception cref="ArgumentException">An interval is empty or two overlap.</exception>
    public Calendar(IEnumerable<Interval> open)
        : this(open.Select(interval => (IEnumerable<Interval>)[interval]))
    {
    }

    private Calendar(IEnumerable<IEnumerable<Interval>> days)
    {
        var open = days.SelectMany((day, d) => day.Select(interval => (Interval: interval, Day: d))).OrderBy(at => at.Interval.Start).ToList();
        Open = [.. open.Select(at => at.Interval)];
        var day = ImmutableArray.CreateBuilder<int>(open.Count);
        var seen = new HashSet<int>();
        for (var i = 0; i < open.Count; i++)
        {
            if (Open[i].End <= Open[i].Start)
                throw new ArgumentException($"Interval {i} is empty.", nameof(days));
            if (i > 0 && Open[i].Start < Open[i - 1].End)
                throw new ArgumentException($"Intervals {i - 1} and {i} overlap.", nameof(days));
            if (seen.Add(open[i].Day) is var isNew && !isNew && open[i - 1].Day != open[i].Day)
                throw new ArgumentException($"The day of interval {i} goes on after another has begun.", nameof(days));
            day.Add(seen.Count - 1);
        }

        Day = day.MoveToImmutable();
    }

    /// <summary>Takes the intervals day by day, in any order.</summary>
    /// <exception cref="ArgumentException">An interval is empty, two overlap, or a day goes on after another has begun.</exception>
    public static Calendar OfDays(IEnumerable<IEnumerable<Interval>> days) => new(days);

    /// <summary>The open intervals in order of time.</summary>
    public ImmutableArray<Interval> Open { get; }

    /// <summary>To which day each open interval belongs. Days are counted from 0 in order of time, those without an interval left out.</summary>
    public ImmutableArray<int> Day { get; }

    /// <summary>The open intervals of each day, in order of time.</summary>
    public IEnumerable<IGrouping<int, Interval>> Days => Open.Zip(Day).GroupBy(at => at.Second, at => at.First);
}

/// <summary>From a tick up to, not including, another.</summary>
public readonly record struct Interval(long Start, long End)
{
    /// <summary>Its length in ticks.</summary>
    public long Length => End - Start;
}
