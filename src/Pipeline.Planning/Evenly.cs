using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>
/// Fills the days evenly where the batch asks for that before something else: plans anew with no more than so much work in any day, and
/// keeps the lowest that is. Nothing that the batch puts first is lost by it: no due time, and not the sitting in which all is ready, unless
/// even days come before that; then the work is spread until the last due time, or, where not everything is due, until all is ready as before.
/// </summary>
/// <param name="attempt">Plans the batch.</param>
/// <param name="pacing">How close to the low figures.</param>
/// <param name="aims">What is best, most important first.</param>
internal sealed class Evenly(Attempt attempt, Pacing pacing, Sequence<BatchAim> aims)
{
    private const int Tries = 4;

    /// <summary>A plan with evener days; the same where none is found, or none is asked for.</summary>
    public Timetable Of(Timetable found)
    {
        if (aims[^1] == BatchAim.EvenDays || found.Runs.Count == 0)
            return found;
        var isFirst = aims.ToList().IndexOf(BatchAim.EvenDays) < aims.ToList().IndexOf(BatchAim.FinishSoon);
        var models = found.Posed.Activities.Count(posed => posed.Step is null);
        var dues = found.Posed.Problem.Dues;
        var until = isFirst && dues.Length == models ? Math.Max(dues.Max(due => due.By), found.Planned.Score.Finish) : found.Planned.Score.Finish;
        var last = found.SittingAt(until);
        var busy = Busy(found);
        var days = found.Posed.Sittings.Take(last + 1).Skip(found.First).Select(sitting => sitting.Date).Distinct().Count();
        var (low, high) = (busy.Sum() / Math.Max(1, days * found.Batch.Bench.Painters.Count), busy.Max());
        var best = found;
        for (var tries = 0; tries < Tries && high - low > 1; tries++)
        {
            var most = (low + high) / 2;
            if (attempt.Once(pacing, found.Slack, most) is Trial.Found { Table: var next } && next.IsInTime == found.IsInTime && next.SittingAt(next.Planned.Score.Finish) <= last)
                (best, high) = (next, most);
            else
                low = most;
        }

        return best;
    }

    // Attended ticks on each day of each painter.
    private static List<long> Busy(Timetable table) =>
    [
        .. table.Runs.Where((run, r) => run.Worker >= 0 && !table.IsPast(r)).Select(run => (run.Worker, run.Start, Ticks: run.End - run.Start))
            .Concat(table.Planned.Schedule.CloseDowns.Select(close => (close.Worker, close.Start, close.Ticks)))
            .GroupBy(block => (block.Worker, table.Posed.Sittings[table.SittingAt(block.Start)].Date)).Select(day => day.Sum(block => block.Ticks)),
    ];
}
