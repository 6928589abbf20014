using Pipeline.Scheduling;
using Pipeline.Workflows;
using LocalDate = NodaTime.LocalDate;

namespace Pipeline.Planning;

/// <summary>Why a sitting is left early although something is still to be done.</summary>
internal sealed class FreeAtEnd
{
    /// <summary>Less than this many minutes nobody asks about.</summary>
    private const int FewMinutes = 20;

    private readonly Timetable table;
    private readonly long[] ready;
    private readonly Lazy<HashSet<int>> onChains;

    // What keeps something that is left from being begun at the end of a sitting, the strongest last.
    private enum Held
    {
        Waits,
        Decided,
        TooLong,
        ForSome,
        OverShare,
        Nothing,
    }

    public FreeAtEnd(Timetable table)
    {
        this.table = table;
        var waits = table.Posed.Problem.Waits.Where(wait => wait.Least is not null).ToLookup(wait => wait.To);
        var within = table.Posed.Problem.Waits.Where(wait => wait.Greatest is not null).ToLookup(wait => wait.From);
        ready = [.. table.Runs.Select(run => waits[run.Activity].Select(wait => Ready(run, wait))
            .Concat(within[run.Activity].Select(wait => NotBefore(run, wait)))
            .Append(table.Posed.Problem.Activities[run.Activity].NotBefore)
            .Append(run.FirstUnit > 0 ? table.Start(run.Activity, run.FirstUnit - 1) : 0).Max())];
        onChains = new(() => [.. Enumerable.Range(0, table.Posed.Activities.Length).Where(a => table.StepOf(a) is null).SelectMany(a => Chain.Back(table, Chain.LastOf(table, a)))]);
    }

    /// <summary>What is free at the end of a painter's sitting, the share kept free not counted; null if that is little, or nothing is left for the painter.</summary>
    /// <param name="worker">The painter.</param>
    /// <param name="lastEnd">When the last task is done.</param>
    public FreeTime? After(int worker, long lastEnd)
    {
        var open = table.Posed.Problem.Workers[worker].Open.Open.Last(interval => interval.Start < lastEnd);
        var minutes = Clock.WholeMinutes(open.End - lastEnd);
        var left = Enumerable.Range(0, table.Runs.Count).Where(r => table.Runs[r].Worker >= 0 && table.Runs[r].Start >= open.End && May(worker, table.Runs[r].Activity)).ToList();
        if (minutes < FewMinutes || left.Count == 0)
            return null;
        var strongest = left.Select(r => (Run: r, Held: What(r, worker, lastEnd, open))).OrderByDescending(at => at.Held).ThenBy(at => table.Runs[at.Run].Start).First();
        return new FreeTime(minutes, strongest.Held switch
        {
            Held.Waits => new FreeBecause.AllWaits(),
            Held.Decided => new FreeBecause.Decided(),
            Held.TooLong => new FreeBecause.TooShort(),
            Held.OverShare => new FreeBecause.HasShare(table.Posed.IsEvened),
            var held => new FreeBecause.CouldBegin(Named(strongest.Run), held == Held.ForSome, Won(strongest.Run)),
        });
    }

    private WhyNotBegun Won(int r) => !onChains.Value.Contains(r) ? WhyNotBegun.NothingSooner
        : table.IsKept ? WhyNotBegun.StaysClose
        : table.Batch.Aims[0] == BatchAim.FinishSoon ? WhyNotBegun.NothingFound
        : WhyNotBegun.OtherAim;

    private bool May(int worker, int activity) => table.Posed.Problem.Activities[activity].Workers is var workers && (workers.IsEmpty || workers.Contains(worker));

    private Held What(int r, int worker, long from, Interval open)
    {
        var run = table.Runs[r];
        var activity = table.Posed.Problem.Activities[run.Activity];
        if (ready[r] >= open.End)
            return Held.Waits;
        if (activity.PinnedStart is not null)
            return Held.Decided;
        var begin = RoomFrom(r, Math.Max(Free(worker, activity, from) + activity.SetUp, ready[r]));
        if (begin >= open.End)
            return Held.Waits;
        var end = begin + activity.PerUnit + activity.PutAway + (activity.Tool is { } tool ? table.Posed.Problem.Tools[tool.Tool].CloseDown[tool.Load] : 0);
        if (end > open.End)
            return Held.TooLong;
        // with all units of the run; things done together take as long whatever their number
        var more = activity.Together ? 0 : (run.Units - 1) * activity.PerUnit;
        if (end + more > open.End)
            return Held.ForSome;
        return IsOverShare(worker, open, run, end + more - begin + activity.SetUp) ? Held.OverShare : Held.Nothing;
    }

    // From when on one piece finds room in all the places it takes: those there are counted once, however many of their layers are wet.
    private long RoomFrom(int r, long from)
    {
        var mine = (Of(table.Runs[r].Activity), table.Runs[r].FirstUnit);
        var at = from;
        foreach (var use in table.Posed.Problem.Activities[table.Runs[r].Activity].Places)
        {
            var there = Stays(use.Place).Where(stay => stay.From < table.Runs[r].Start && stay.Piece != mine).ToList();
            while (there.Where(stay => stay.From <= at && stay.Until > at).DistinctBy(stay => stay.Piece).ToList() is { Count: > 0 } now
                && now.Sum(stay => stay.PerUnit) + use.PerUnit > table.Posed.Problem.Places[use.Place].Capacity)
                at = now.Min(stay => stay.Until);
        }

        return at;
    }

    private IEnumerable<((int, int) Piece, int PerUnit, long From, long Until)> Stays(int place)
    {
        for (var a = 0; a < table.Posed.Activities.Length; a++)
        {
            foreach (var use in table.Posed.Problem.Activities[a].Places.Where(use => use.Place == place))
            {
                for (var k = 0; k <= table.LastUnit(a); k++)
                    yield return ((Of(a), k), use.PerUnit, table.Start(a, k), table.Finish(a, k) + use.Afterwards);
            }
        }
    }

    // Of one route it is always the same pieces.
    private int Of(int activity) => table.Posed.Activities[activity].Route;

    // A tool put away at the end would be cleaned of what it held instead, and put away later.
    private long Free(int worker, Activity activity, long lastEnd) =>
        activity.Tool is { } use && table.Planned.Schedule.CloseDowns.FirstOrDefault(close => close.Worker == worker && close.Tool == use.Tool && close.Start + close.Ticks == lastEnd) is { } last
            ? last.Start + table.Posed.Problem.Tools[use.Tool].CleanOut[last.Load][use.Load]
            : lastEnd;

    // Whether the day would have more work than it may with a run of another one; what is done later on the same day counts there already.
    private bool IsOverShare(int worker, Interval open, Run run, long ticks)
    {
        if (table.Posed.Problem.Workers[worker].MostPerDay is not { } most || (DateAt(run.Start) == DateAt(open.Start) && run.Worker == worker))
            return false;
        var runs = table.Runs.Where(other => other.Worker == worker && DateAt(other.Start) == DateAt(open.Start)).Sum(other => other.End - other.Start);
        var closeDowns = table.Planned.Schedule.CloseDowns.Where(close => close.Worker == worker && DateAt(close.Start) == DateAt(open.Start)).Sum(close => close.Ticks);
        return runs + closeDowns + ticks > most;
    }

    private LocalDate DateAt(long tick) => table.Posed.Sittings[table.SittingAt(tick)].Date;

    private string Named(int r)
    {
        var activity = table.Runs[r].Activity;
        var model = table.RouteOf(activity).Route.Model;
        return $"{Phrases.Task(model, table.StepOf(activity)!, table.Posed.Activities[activity].Pass)}{(table.Walked.Routes.Count == 1 ? "" : $" on {model.Name}")}";
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

    // From when on what has to follow a run in time does so.
    private long NotBefore(Run run, Wait wait) =>
        table.At(wait.To, run.FirstUnit, wait.ToEdge) - wait.Greatest!.Value - (table.At(run.Activity, run.FirstUnit, wait.FromEdge) - run.WorkStart);
}
