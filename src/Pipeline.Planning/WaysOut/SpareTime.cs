using NodaTime;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>When one could sit at the bench besides: on free days in the usual hours, on others before or after what is there.</summary>
internal static class SpareTime
{
    private const int LeastMinutes = 60;

    // Nobody is asked to paint by night, nor on a working day before it ends (common practice).
    private static readonly LocalTime Latest = new(22, 30);
    private static readonly LocalTime EarliestAtWeekends = new(9, 0);
    private static readonly LocalTime EarliestOnWorkdays = new(17, 0);

    /// <summary>At most one further sitting a day, no longer than the usual one: first on days without any, then on the others, each in order of time.</summary>
    /// <param name="bench">The bench.</param>
    /// <param name="from">None begins before this.</param>
    /// <param name="until">None ends after this.</param>
    public static IReadOnlyList<DatedSitting> Between(Bench bench, Instant from, Instant until)
    {
        if (Usual(bench) is not var (usualFrom, usualMinutes))
            return [];
        var (first, last) = (from.InZone(bench.Zone).LocalDateTime, until.InZone(bench.Zone).LocalDateTime);
        var open = OpenSittings.Between(bench, from, until + Duration.FromDays(1)).ToLookup(sitting => sitting.Date);
        var spare = new List<(bool IsFree, DatedSitting Sitting)>();
        for (var date = first.Date; date <= last.Date; date = date.PlusDays(1))
        {
            if (bench.Away.Any(away => away.First <= date && date <= away.Last))
                continue;
            var taken = open[date].Select(s => (s.Start.InZone(bench.Zone).LocalDateTime, s.End.InZone(bench.Zone).LocalDateTime)).ToList();
            var gap = taken.Count == 0
                ? Within((date + usualFrom, (date + usualFrom).PlusMinutes(usualMinutes)))
                : Widest(taken, usualMinutes, LocalDateTime.Max(first, date + EarliestOn(date)), LocalDateTime.Min(last, date + Latest));
            if (gap is var (start, end) && end.Date == date)
                spare.Add((taken.Count == 0, new DatedSitting(date, start.TimeOfDay, end.TimeOfDay, bench.Place)));
        }

        return [.. spare.OrderBy(s => !s.IsFree).Select(s => s.Sitting)];

        (LocalDateTime From, LocalDateTime To)? Within((LocalDateTime From, LocalDateTime To) hours)
        {
            var (start, end) = (LocalDateTime.Max(first, hours.From), LocalDateTime.Min(last, hours.To));
            return MinutesOf(start, end) >= LeastMinutes ? (start, end) : null;
        }
    }

    private static LocalTime EarliestOn(LocalDate date) =>
        date.DayOfWeek is IsoDayOfWeek.Saturday or IsoDayOfWeek.Sunday ? EarliestAtWeekends : EarliestOnWorkdays;

    private static long MinutesOf(LocalDateTime from, LocalDateTime to) => Period.Between(from, to, PeriodUnits.Minutes).Minutes;

    // The weekly sitting on the most days, else the first dated one.
    private static (LocalTime From, long Minutes)? Usual(Bench bench)
    {
        var (from, to) = bench.Weekly.OrderByDescending(s => s.Days.Count).Select(s => (s.From, s.To)).FirstOrDefault();
        if (bench.Weekly.IsEmpty && !bench.Dated.IsEmpty)
            (from, to) = (bench.Dated[0].From, bench.Dated[0].To);
        if (bench.Weekly.IsEmpty && bench.Dated.IsEmpty)
            return null;
        var minutes = Period.Between(from, to, PeriodUnits.Minutes).Minutes;
        return (from, minutes > 0 ? minutes : minutes + 1440);
    }

    // Right before the first of what is there, or right after one of them.
    private static (LocalDateTime From, LocalDateTime To)? Widest(List<(LocalDateTime From, LocalDateTime To)> taken, long most, LocalDateTime first, LocalDateTime last)
    {
        (LocalDateTime From, LocalDateTime To)? widest = null;
        var at = first;
        foreach (var (from, to) in taken.Append((last, last)))
        {
            var minutes = Math.Min(most, MinutesOf(at, LocalDateTime.Min(from, last)));
            if (minutes >= LeastMinutes && (widest is not { } best || minutes > MinutesOf(best.From, best.To)))
                widest = at == first && from != last ? (from.PlusMinutes(-minutes), from) : (at, at.PlusMinutes(minutes));
            at = LocalDateTime.Max(at, to);
        }

        return widest;
    }
}
