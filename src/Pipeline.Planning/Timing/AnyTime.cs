using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>What is looked at to say something of every plan, whenever it begins.</summary>
internal static class AnyTime
{
    private static readonly LocalDate AnyMonday = new(2026, 1, 5);
    private const int LongestLookDays = 3 * 366;

    /// <summary>The batch with those of its routes in which nothing else is wrong.</summary>
    public static Walked Right(Walked walked, Func<WalkedRoute, bool> which)
    {
        ArgumentNullException.ThrowIfNull(walked);
        var wrong = walked.Findings.Where(finding => finding is { Level: Level.Error, Silenced: null }).Select(finding => finding.Model).ToHashSet();
        return walked with { Routes = walked.Routes.Where(route => which(route) && !wrong.Contains(route.Route.Model.Name)).ToSequence() };
    }

    /// <summary>
    /// From before any date the file names, when the weekly sittings alone hold, until after all of them, with so many days on either side.
    /// No time at all where nobody sits at the bench or that would be too long.
    /// </summary>
    public static (Instant From, Instant Until) Around(Bench bench, int days)
    {
        var dates = bench.Dated.Select(sitting => sitting.Date)
            .Concat(bench.Away.SelectMany(away => new[] { away.First, away.Last }))
            .Concat(bench.Painters.SelectMany(painter => painter.Dates))
            .DefaultIfEmpty(AnyMonday)
            .ToList();
        var (first, last) = (dates.Min(), dates.Max());
        var from = first.PlusDays(-days).AtStartOfDayInZone(bench.Zone).ToInstant();
        if ((bench.Weekly.IsEmpty && bench.Dated.IsEmpty) || Period.DaysBetween(first, last) + (2 * days) > LongestLookDays)
            return (from, from);
        return (from, last.PlusDays(days).AtStartOfDayInZone(bench.Zone).ToInstant());
    }
}
