using System.Collections.Immutable;

namespace Pipeline.Scheduling;

/// <summary>Why a run that starts as its worker's hours open did not fit into the hours before.</summary>
/// <param name="net">The problem.</param>
/// <param name="schedule">What is to be explained.</param>
/// <param name="byWorker">The runs of each worker, in order of time.</param>
/// <param name="waiting">From when on its waits let each run start.</param>
/// <param name="crowded">The place in which a run would have found no room, if its work had started at a tick; null if there was room.</param>
internal sealed class HoursBefore(Net net, Schedule schedule, IReadOnlyList<int>[] byWorker, Waiting waiting, Func<int, long, Reason?> crowded)
{
    private readonly ImmutableArray<Run> runs = schedule.Runs;
    private readonly Following following = new(schedule.Runs, waiting, run => CloseDown(net, run));

    /// <summary>
    /// What came last, of what it waits for and what the hands did, before too little was left of the interval before. A run that does not
    /// start with its hours, or had room before them, is held back by nothing known here.
    /// </summary>
    /// <param name="r">The run, with a worker.</param>
    /// <param name="unitBefore">The run in which the unit before its first goes through the same activity, and when it lets that first start; null if there is none.</param>
    public Reason Why(int r, (int Run, long End)? unitBefore)
    {
        var run = runs[r];
        var open = net.Open[run.Worker];
        var i = Array.FindIndex(open, interval => interval.Start == run.Start);
        if (i < 0)
            return new Reason.Nothing();
        var (ready, waits) = waiting.Least(r);
        var lead = run.WorkStart - run.Start;
        var earliest = Math.Max(Math.Max(ready, unitBefore?.End ?? ready) - lead, net[run.Activity].NotBefore);
        // nothing may start in hours before that
        if (i == 0 || open[i - 1].End <= net[run.Activity].NotBefore)
            return waits is null ? new Reason.Closed(run.Worker, -1) : new Reason.ReadyTooLate(run.Worker, waits);

        var before = open[i - 1];
        var work = Work(run.Worker, before).ToList();
        var busyUntil = work.Select(block => block.End).DefaultIfEmpty(before.Start).Max();
        var last = byWorker[run.Worker].Where(other => runs[other].Start >= before.Start && runs[other].Start < before.End).Cast<int?>().LastOrDefault();
        var start = Math.Max(earliest, busyUntil);
        var ticks = run.End - run.Start + CloseDown(net, run);
        if (start + ticks <= before.End)
        {
            if (ShareOf(run, i - 1, ticks) is { } share)
                return new Reason.HadItsShare(run.Worker, share);
            return crowded(r, start + lead) ?? Together(start) ?? new Reason.Nothing();
        }

        if (unitBefore is { } unit && unit.End >= ready && unit.End - lead > busyUntil)
            return new Reason.Closed(run.Worker, unit.Run);
        return waits is not null && ready - lead > busyUntil
            ? new Reason.ReadyTooLate(run.Worker, waits)
            : new Reason.Closed(run.Worker, last ?? -1);

        // by itself it would have been there
        Reason? Together(long start)
        {
            var tied = waiting.Tied(r);
            if (tied.Waits is null || tied.At - lead + ticks <= before.End)
                return null;
            if (following.WithoutRoom(r, start, before, open[i]) is not { } follower)
                return new Reason.ReadyTooLate(run.Worker, tied.Waits);
            return waits is not null && ready - lead > busyUntil
                ? new Reason.ReadyTooLate(run.Worker, waits, follower)
                : new Reason.Closed(run.Worker, last ?? -1, follower);
        }
    }

    // The last run of the day of an earlier interval, if the day has no room for so many ticks more; what is done on the same day counts wherever it is.
    private int? ShareOf(Run run, int interval, long ticks)
    {
        var (open, day) = (net.Open[run.Worker], net.Day[run.Worker]);
        if (open.Zip(day).Any(at => at.First.Start == run.Start && at.Second == day[interval]))
            return null;
        var mine = open.Where((_, i) => day[i] == day[interval]).ToList();
        if (mine.SelectMany(of => Work(run.Worker, of)).Sum(block => block.End - block.Start) + ticks <= net.MostPerDay[run.Worker])
            return null;
        return byWorker[run.Worker].Where(r => mine.Exists(of => runs[r].Start >= of.Start && runs[r].Start < of.End)).Cast<int?>().LastOrDefault();
    }

    private IEnumerable<(long Start, long End)> Work(int worker, Interval open) => byWorker[worker].Select(other => (runs[other].Start, runs[other].End))
        .Concat(schedule.CloseDowns.Where(close => close.Worker == worker).Select(close => (close.Start, End: close.Start + close.Ticks)))
        .Where(block => block.Start >= open.Start && block.Start < open.End);

    // Whatever tool it takes is closed down before the hours end.
    private static long CloseDown(Net net, Run run) => net.Tool[run.Activity] >= 0 ? net.Problem.Tools[net.Tool[run.Activity]].CloseDown[net.Load[run.Activity]] : 0;
}
