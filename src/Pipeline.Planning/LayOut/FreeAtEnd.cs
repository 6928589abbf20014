using Pipeline.Scheduling;

namespace Pipeline.Planning;

/// <summary>Why a sitting is left early although something is still to be done.</summary>
internal sealed class FreeAtEnd
{
    /// <summary>Less than this many minutes nobody asks about.</summary>
    private const int FewMinutes = 20;

    private readonly Timetable table;
    private readonly long[] ready;

    public FreeAtEnd(Timetable table)
    {
        this.table = table;
        var waits = table.Posed.Problem.Waits.Where(wait => wait.Least is not null).ToLookup(wait => wait.To);
        ready = [.. table.Runs.Select(run => waits[run.Activity].Select(wait => Ready(run, wait))
            .Append(table.Posed.Problem.Activities[run.Activity].NotBefore)
            .Append(run.FirstUnit > 0 ? table.Start(run.Activity, run.FirstUnit - 1) : 0).Max())];
    }

    /// <summary>What is free at the end of a painter's sitting, the share kept free not counted; null if that is little or cannot be explained.</summary>
    /// <param name="worker">The painter.</param>
    /// <param name="lastEnd">When the last task is done.</param>
    public FreeTime? After(int worker, long lastEnd)
    {
        var open = table.Posed.Problem.Workers[worker].Open.Open.Last(interval => interval.Start < lastEnd);
        var minutes = Clock.WholeMinutes(open.End - lastEnd);
        if (minutes < FewMinutes)
            return null;
        var later = Enumerable.Range(0, table.Runs.Count).Where(r => table.Runs[r].Worker == worker && table.Runs[r].Start >= open.End).ToList();
        var begun = later.Where(r => ready[r] < open.End).ToList();
        if (later.Count == 0 || begun.Exists(r => table.Posed.Problem.Activities[table.Runs[r].Activity].PinnedStart is not null || IsRoomFor(r, lastEnd, open.End)))
            return null;
        return new FreeTime(minutes, begun.Count == 0 ? FreeBecause.AllWaits : FreeBecause.TooShort);
    }

    // For one unit at least; things done together take as long whatever their number.
    private bool IsRoomFor(int r, long from, long until)
    {
        var run = table.Runs[r];
        return Math.Max(from + run.SetUp, ready[r]) + table.Posed.Problem.Activities[run.Activity].PerUnit + run.PutAway <= until;
    }

    // When a wait lets the first unit of a run start, if the others follow without a break.
    private long Ready(Run run, Wait wait)
    {
        var activity = table.Posed.Problem.Activities[run.Activity];
        var toFinish = wait.ToEdge == Edge.Finish ? activity.PerUnit + activity.Unattended : 0;
        if (wait.Scope == Scope.WholeLot)
            return run.FirstUnit > 0 ? 0 : table.At(wait.From, table.LastUnit(wait.From), wait.FromEdge) + wait.Least!.Value - toFinish;
        return Enumerable.Range(0, run.Units).Max(k =>
            table.At(wait.From, run.FirstUnit + k, wait.FromEdge) + wait.Least!.Value - toFinish - (activity.Together ? 0 : k * activity.PerUnit));
    }
}
