using System.Collections.Immutable;
using NodaTime;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>One sitting with its real start and end.</summary>
/// <param name="Date">The date in the bench's zone on which it begins, even if it goes on past midnight.</param>
/// <param name="Start">When it opens.</param>
/// <param name="End">When it closes; later than the start.</param>
public sealed record OpenSitting(LocalDate Date, Instant Start, Instant End)
{
    /// <summary>How long it really lasts, clock changes included.</summary>
    public double Minutes => (End - Start).TotalMinutes;
}

/// <summary>Turns what the bench says about weekdays and dates into sittings as instants.</summary>
public static class OpenSittings
{
    /// <summary>
    /// The sittings between two instants, in order and apart from each other. Sittings that overlap or touch become one; the one under way at
    /// <paramref name="from"/> begins there. Hours that the clocks skip or repeat are taken leniently: a skipped time is moved on by the length
    /// of the gap, of a repeated one the earlier is meant. A sitting that vanishes in a gap is left out.
    /// </summary>
    public static ImmutableArray<OpenSitting> Between(Bench bench, Instant from, Instant until)
    {
        ArgumentNullException.ThrowIfNull(bench);
        if (until <= from)
            return [];
        var sittings = new List<OpenSitting>();
        // a sitting that began the day before may still be open
        var first = from.InZone(bench.Zone).Date.PlusDays(-1);
        var last = until.InZone(bench.Zone).Date;
        var dated = bench.Dated.ToLookup(sitting => sitting.Date);
        for (var date = first; date <= last; date = date.PlusDays(1))
        {
            if (bench.Away.Any(away => away.First <= date && date <= away.Last))
                continue;
            foreach (var weekly in bench.Weekly.Where(sitting => sitting.Days.Contains(date.DayOfWeek)))
                Add(date, weekly.From, weekly.To);
            foreach (var extra in dated[date])
                Add(date, extra.From, extra.To);
        }

        return [.. Merged(sittings).Where(s => s.End > from && s.Start < until).Select(s => s.Start < from ? s with { Start = from } : s)];

        void Add(LocalDate date, LocalTime opens, LocalTime closes)
        {
            var start = date.At(opens).InZoneLeniently(bench.Zone).ToInstant();
            var end = (closes > opens ? date : date.PlusDays(1)).At(closes).InZoneLeniently(bench.Zone).ToInstant();
            if (end > start)
                sittings.Add(new OpenSitting(start.InZone(bench.Zone).Date, start, end));
        }
    }

    private static List<OpenSitting> Merged(List<OpenSitting> sittings)
    {
        var merged = new List<OpenSitting>();
        foreach (var sitting in sittings.OrderBy(s => s.Start).ThenBy(s => s.End))
        {
            if (merged.Count > 0 && sitting.Start <= merged[^1].End)
                merged[^1] = merged[^1] with { End = Instant.Max(merged[^1].End, sitting.End) };
            else
                merged.Add(sitting);
        }

        return merged;
    }
}
