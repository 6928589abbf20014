using Pipeline.Abstractions;
using Pipeline.Scheduling;

namespace Pipeline.Planning;

/// <summary>A schedule as rules of plans see it.</summary>
internal static class PlanSeen
{
    /// <summary>The whole plan.</summary>
    public static PlanView Of(Timetable table, BatchView batch) => new()
    {
        Batch = batch,
        IsWhole = true,
        Slack = table.Batch.Bench.Slack,
        Sittings = Sittings(table),
        Ready = Ready(table),
    };

    private static Sequence<SittingView> Sittings(Timetable table)
    {
        var latest = new LatestStarts(table);
        var work = new SortedDictionary<(int Sitting, int Worker), List<WorkView>>();
        foreach (var run in table.Runs.Where((run, r) => run.Worker >= 0 && !table.IsPast(r)))
        {
            var step = new StepInBatch(table.Posed.Activities[run.Activity].Route, table.StepOf(run.Activity)!.Index);
            Of(run.Start, run.Worker).Add(Work(table, step, run.Start, run.End, latest.Of(run)));
        }

        foreach (var close in table.Planned.Schedule.CloseDowns)
            Of(close.Start, close.Worker).Add(Work(table, null, close.Start, close.Start + close.Ticks, null));
        return work.Select(at =>
        {
            var sitting = table.Posed.Sittings[at.Key.Sitting];
            return new SittingView(
                table.Batch.Bench.Painters[at.Key.Worker].Name,
                Local(table, table.Clock.TickAt(table.Opens(at.Key.Sitting))),
                Local(table, table.Clock.TickAt(sitting.End)),
                (sitting.End - table.Opens(at.Key.Sitting)).TotalMinutes,
                at.Value.OrderBy(one => one.From).ToSequence());
        }).ToSequence();

        List<WorkView> Of(long tick, int worker)
        {
            var key = (table.SittingAt(tick), worker);
            if (!work.TryGetValue(key, out var list))
                work[key] = list = [];
            return list;
        }
    }

    private static WorkView Work(Timetable table, StepInBatch? step, long from, long to, long? latest) =>
        new(step, Local(table, from), Local(table, to), Clock.Minutes(to - from), latest is { } tick ? Local(table, tick) : null);

    private static Sequence<ReadyView> Ready(Timetable table)
    {
        var late = new WhyLate(table);
        var views = new List<ReadyView>();
        for (var a = 0; a < table.Posed.Activities.Length; a++)
        {
            if (table.StepOf(a) is not null)
                continue;
            var r = table.Posed.Activities[a].Route;
            var route = table.Walked.Routes[r];
            var passes = table.Posed.Routes[r];
            var last = Settling.Last(route).Select(passes.Last).MaxBy(step => Comfortable(table, step));
            var ready = table.ReadyAt(a);
            var (why, helps) = late.Of(a);
            views.Add(new ReadyView
            {
                Last = new StepInBatch(r, table.StepOf(last)!.Index),
                WorkDone = Local(table, Math.Max(table.LastHands(a), passes.Activities.Max(activity => table.Finish(activity)))),
                Ready = LocalUntil(table, ready),
                Comfortable = LocalUntil(table, Math.Max(ready, Comfortable(table, last))),
                Due = route.Route.Due is { } due ? new DueTime(due.By.ToDateTimeUnspecified(), due.Place) : null,
                LateMinutes = table.Posed.Problem.Dues.Where(each => each.Activity == a).Select(table.LateMinutes).DefaultIfEmpty(0).Max(),
                WhyNotEarlier = why,
                WhatHelps = helps,
            });
        }

        return views.ToSequence();
    }

    private static long Comfortable(Timetable table, int activity) =>
        table.Finish(activity) + Clock.AtLeast(Settling.UntilReady(table.StepOf(activity)!, table.RouteOf(activity).Route.Model, table.Batch.Bench.Climate, Workflows.Pace.Comfortable));

    private static DateTime Local(Timetable table, long tick) => table.Shown(tick).LocalDateTime.ToDateTimeUnspecified();

    private static DateTime LocalUntil(Timetable table, long tick) => table.ShownUntil(tick).LocalDateTime.ToDateTimeUnspecified();
}

/// <summary>How late runs could start without anything else having to start later.</summary>
internal sealed class LatestStarts(Timetable table)
{
    private readonly ILookup<int, Wait> after = table.Posed.Problem.Waits.Where(wait => wait.Least is not null).ToLookup(wait => wait.From);
    private readonly ILookup<int, Wait> within = table.Posed.Problem.Waits.Where(wait => wait.Greatest is not null).ToLookup(wait => wait.To);

    // models without a due time may be ready as late as the last of all
    private readonly long end = Enumerable.Range(0, table.Posed.Activities.Length).Where(a => table.StepOf(a) is null).Select(a => table.Start(a, 0)).DefaultIfEmpty(0).Max();

    /// <summary>The latest start of a run in ticks; null if the painter has decided it.</summary>
    public long? Of(Run run)
    {
        if (table.Posed.Problem.Activities[run.Activity].PinnedStart is not null)
            return null;
        var room = long.MaxValue;
        for (var k = run.FirstUnit; k < run.FirstUnit + run.Units; k++)
        {
            foreach (var wait in after[run.Activity])
            {
                var unit = wait.Scope == Scope.WholeLot ? 0 : k;
                room = Math.Min(room, Latest(wait, unit) - wait.Least!.Value - table.At(run.Activity, k, wait.FromEdge));
            }

            foreach (var wait in within[run.Activity])
                room = Math.Min(room, table.At(wait.From, k, wait.FromEdge) + wait.Greatest!.Value - table.At(run.Activity, k, wait.ToEdge));
        }

        return room == long.MaxValue ? null : run.Start + Math.Max(0, room);
    }

    private long Latest(Wait wait, int unit)
    {
        if (table.StepOf(wait.To) is not null)
            return table.At(wait.To, unit, wait.ToEdge);
        var due = table.Posed.Problem.Dues.Where(each => each.Activity == wait.To).Select(each => (long?)each.By).Min();
        return Math.Max(table.Start(wait.To, 0), due ?? end);
    }
}
