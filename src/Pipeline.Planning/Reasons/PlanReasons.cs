using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Scheduling;

namespace Pipeline.Planning;

/// <summary>Answers why a plan is as it is. Pure; reckoned when asked.</summary>
public sealed class PlanReasons
{
    // A sitting with less room than this left at its end is full: hardly anything fits in.
    private const double FullToMinutes = 10;

    private readonly Timetable table;
    private readonly Because because;
    private readonly Sequence<ModelFinish> finishes;

    internal PlanReasons(Timetable table, Sequence<ModelFinish> finishes) =>
        (this.table, because, this.finishes) = (table, new Because(table), finishes);

    /// <summary>When a step is planned and why then.</summary>
    /// <param name="route">Position among the batch's routes.</param>
    /// <param name="step">Index in the route.</param>
    public StepReasons OfStep(int route, int step)
    {
        var passes = table.Posed.Routes[route];
        var runs = Enumerable.Range(0, table.Runs.Count).Where(r => passes.Of(step).Contains(table.Runs[r].Activity))
            .OrderBy(r => table.Runs[r].Activity).ThenBy(r => table.Runs[r].FirstUnit).ToList();
        var chain = Chain.Back(table, table.Planned.CriticalRuns[^1]);
        return new StepReasons(
            runs.Select(Shown).ToSequence(),
            Length(Slack(passes.Last(step))),
            runs.Exists(chain.Contains),
            HoldsBack([.. passes.Of(step)], runs));
    }

    /// <summary>Why the plan is not shorter, or why one model is not ready sooner.</summary>
    /// <param name="model">The model; null for the one that is ready last.</param>
    public LateReasons Late(string? model)
    {
        var ready = Enumerable.Range(0, table.Posed.Activities.Length).Where(a => table.StepOf(a) is null).ToList();
        var target = model is null
            ? ready.MaxBy(a => (table.ReadyAt(a), -a))
            : ready.Single(a => table.RouteOf(a).Route.Model.Name == model);
        var chain = Chain.Back(table, Chain.LastOf(table, target));
        var time = new ChainTime(table, because, chain, target);
        return new LateReasons(
            finishes[ready.IndexOf(target)],
            Chain.Of(table, chain),
            Length(time.Span),
            Length(time.Hands),
            Length(time.Drying),
            Length(time.Span - time.Hands - time.Drying),
            Waits(chain, time),
            Full(chain),
            ready.Select((a, i) => new ModelSlack(finishes[i], Length(ModelSlack(a)))).ToSequence());
    }

    // From when hands are done too: putting away after the last step comes before the due time like everything else.
    private long ModelSlack(int ready) =>
        Math.Max(0, table.Planned.Finishes[ready].Slack - (table.ReadyAt(ready) - table.Planned.Finishes[ready].Finish));

    // Until what follows it, or a limit; what only marks that the model is ready moves with it, as far as that may.
    private long Slack(int activity)
    {
        var slack = table.Planned.Score.Finish - table.Finish(activity);
        foreach (var wait in table.Posed.Problem.Waits)
        {
            if (wait.From == activity && wait.Least is { } least)
                slack = Math.Min(slack, Elapsed(wait).Min() - least + (table.StepOf(wait.To) is null ? table.Planned.Finishes[wait.To].Slack : 0));
            if (wait.To == activity && wait.Greatest is { } greatest)
                slack = Math.Min(slack, greatest - Elapsed(wait).Max());
        }

        return Math.Max(0, slack);
    }

    private IEnumerable<long> Elapsed(Wait wait) => wait.Scope == Scope.WholeLot
        ? [table.At(wait.To, 0, wait.ToEdge) - table.At(wait.From, table.LastUnit(wait.From), wait.FromEdge)]
        : Enumerable.Range(0, table.LastUnit(wait.From) + 1).Select(k => table.At(wait.To, k, wait.ToEdge) - table.At(wait.From, k, wait.FromEdge));

    private static Duration Length(long ticks) => Duration.FromMinutes(Clock.Minutes(ticks));

    private long FinishOf(Run run) => table.Finish(run.Activity, run.FirstUnit + run.Units - 1);

    private StepRun Shown(int r)
    {
        var run = table.Runs[r];
        return new StepRun(
            table.Shown(run.Start),
            run.Worker >= 0 ? table.Shown(run.End) : table.ShownUntil(FinishOf(run)),
            run.Worker >= 0 ? table.Batch.Bench.Painters[run.Worker].Name : null,
            table.StepOf(run.Activity) is { } step ? Phrases.Coat(step, table.Posed.Activities[run.Activity].Pass) : "",
            Phrases.Units(run.FirstUnit + 1, run.Units, table.RouteOf(run.Activity).Route.Model.Count),
            because.Of(r),
            table.IsPast(r));
    }

    private Sequence<ChainWait> Waits(IReadOnlyList<int> chain, ChainTime time)
    {
        var waits = new List<(string For, long Ticks)>();
        for (var i = 1; i < chain.Count; i++)
        {
            if (time.Waited(i) is > 0 and var ticks)
                waits.Add((For(table.Posed.Causes[because.WaitBefore(chain[i])!.Reason]), ticks));
        }

        return waits.GroupBy(wait => wait.For).Select(same => new ChainWait(same.Key, same.Count(), Length(same.Sum(wait => wait.Ticks))))
            .OrderByDescending(wait => wait.Together).ThenBy(wait => wait.For, StringComparer.Ordinal).ToSequence();
    }

    private static string For(Cause cause) => cause switch
    {
        Cause.Ruled ruled => ruled.Wait.Needs.For,
        Cause.Awaited awaited => Because.State(awaited.State),
        Cause.NextCoat => Because.State(DryingState.Recoatable),
        Cause.Ready => "handleable",
        _ => "what comes before",
    };

    private Sequence<ZonedDateTime> Full(IReadOnlyList<int> chain)
    {
        var full = new List<ZonedDateTime>();
        foreach (var sitting in chain.Where(r => table.Runs[r].Worker >= 0 && !table.IsPast(r)).Select(r => table.SittingAt(table.Runs[r].Start)).Distinct().Order())
        {
            var open = table.Posed.Sittings[sitting];
            var busy = table.Runs.Where(run => run.Worker >= 0 && table.SittingAt(run.Start) == sitting).GroupBy(run => run.Worker).Max(mine => mine.Sum(run => run.End - run.Start))
                + table.Planned.Schedule.CloseDowns.Where(close => table.SittingAt(close.Start) == sitting).Sum(close => close.Ticks);
            if (Clock.Minutes(busy) > (open.Minutes * (1 - table.Slack)) - FullToMinutes)
                full.Add(open.Start.InZone(table.Zone));
        }

        return full.ToSequence();
    }

    private Sequence<HeldBack> HoldsBack(IReadOnlyList<int> passes, List<int> runs)
    {
        var held = new Dictionary<int, HeldBack>();
        foreach (var run in Enumerable.Range(0, table.Runs.Count).Where(r => !passes.Contains(table.Runs[r].Activity) && because.Before(r) is { } before && runs.Contains(before)))
            held.TryAdd(table.Runs[run].Activity, Held(run, because.Of(run), isBinding: true));
        foreach (var wait in table.Posed.Problem.Waits.Where(w => passes.Contains(w.From) && !passes.Contains(w.To) && w.Least is not null && w.Reason >= 0))
        {
            if (!held.ContainsKey(wait.To))
                held[wait.To] = Held(table.RunOf(wait.To, 0), Asked(wait), isBinding: false);
        }

        return held.Values.OrderBy(h => h.From.ToInstant()).ThenBy(h => h.What, StringComparer.Ordinal).ToSequence();

        HeldBack Held(int run, string why, bool isBinding) => new(because.Name(run, runs[0]), StartOf(table.Runs[run]), why, isBinding);
    }

    // A model is ready at the moment that the plan says.
    private ZonedDateTime StartOf(Run run) => table.StepOf(run.Activity) is null ? table.ShownUntil(table.ReadyAt(run.Activity)) : table.Shown(run.Start);

    // Why one step waits for another, without its times.
    private string Asked(Wait wait) => table.Posed.Causes[wait.Reason] switch
    {
        Cause.Order order => $"{Phrases.Capital(order.Pair.Why)}.",
        Cause.Ruled ruled => $"It needs {Phrases.About(Clock.Minutes(wait.Least ?? 0))}, {ruled.Wait.Needs.For}.",
        Cause.Masked masked => $"The mask '{masked.Mask.Name}' is on from here to there.",
        Cause.Awaited awaited => $"It waits until it is {Because.State(awaited.State)}.",
        _ when wait.Least is null or 0 => "It is the last to be done.",
        _ => $"It needs {Phrases.About(Clock.Minutes(wait.Least.Value))} until it {(table.RouteOf(wait.To).Route.Model.ReadyAt == DryingState.Cured ? "has cured" : "can be handled")}.",
    };
}
