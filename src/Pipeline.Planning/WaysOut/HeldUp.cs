using NodaTime;
using Pipeline.Scheduling;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>Where the chains to what is late wait for somebody to be at the bench, and for hands.</summary>
internal static class HeldUp
{
    // With less than this left of a sitting once the piece has dried, nobody sits down to it.
    private const double LeastMinutes = 20;

    /// <summary>Further sittings that lie where a chain waits for one, what they save most first.</summary>
    /// <param name="table">A late plan.</param>
    /// <param name="spare">When one could sit at the bench besides.</param>
    public static IEnumerable<DatedSitting> ForSittings(Timetable table, IReadOnlyList<DatedSitting> spare)
    {
        var saved = new Dictionary<DatedSitting, long>();
        foreach (var (from, until) in Gaps(table))
        {
            foreach (var sitting in spare)
            {
                var (opens, closes) = (TickAt(table, sitting.Date + sitting.From), TickAt(table, sitting.Date + sitting.To));
                if (opens < until && Math.Max(opens, from) + Clock.AtLeast(LeastMinutes) <= closes)
                    saved[sitting] = Math.Max(saved.GetValueOrDefault(sitting), until - Math.Max(opens, from));
            }
        }

        return saved.OrderByDescending(each => each.Value).ThenBy(each => each.Key.Date).ThenBy(each => each.Key.From).Select(each => each.Key);
    }

    /// <summary>Days on which a chain waits for hands that are busy, most of that first.</summary>
    public static IEnumerable<LocalDate> ForHands(Timetable table)
    {
        var waits = new Dictionary<LocalDate, long>();
        foreach (var run in LateChains(table).SelectMany(chain => chain).Distinct())
        {
            if (table.Planned.Reasons[run] is not (Reason.WorkerBusy or Reason.ClosingDown or Reason.Closed))
                continue;
            var date = table.Shown(table.Runs[run].Start).Date;
            waits[date] = waits.GetValueOrDefault(date) + table.Runs[run].End - table.Runs[run].Start;
        }

        return waits.OrderByDescending(each => each.Value).ThenBy(each => each.Key).Select(each => each.Key);
    }

    private static IEnumerable<IReadOnlyList<int>> LateChains(Timetable table) =>
        table.Posed.Problem.Dues.Where(due => table.LateMinutes(due) > 0).Select(due => Chain.Back(table, table.RunOf(due.Activity, 0)));

    // From when a run of the chain could have been begun until a sitting let it.
    private static IEnumerable<(long From, long Until)> Gaps(Timetable table)
    {
        foreach (var chain in LateChains(table))
        {
            var before = 0L;
            foreach (var run in chain.Where(run => table.Runs[run].Worker >= 0 && !table.IsPast(run)))
            {
                var (start, end) = (table.Runs[run].Start, table.Runs[run].End);
                if (before == 0 || table.SittingAt(before) != table.SittingAt(start))
                    yield return (Math.Max(before, Ready(table, run)), start);
                before = end;
            }
        }
    }

    // The least waits alone; hands and tools may ask for more.
    private static long Ready(Timetable table, int index)
    {
        var run = table.Runs[index];
        return table.Posed.Problem.Waits.Where(wait => wait.To == run.Activity && wait.Least is not null)
            .Select(wait => table.At(wait.From, wait.Scope == Scope.WholeLot ? table.LastUnit(wait.From) : run.FirstUnit, wait.FromEdge) + wait.Least!.Value)
            .DefaultIfEmpty(0).Max();
    }

    private static long TickAt(Timetable table, LocalDateTime at) => table.Clock.TickAt(at.InZoneLeniently(table.Zone).ToInstant());
}
