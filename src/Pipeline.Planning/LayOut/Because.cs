using Pipeline.Abstractions;
using Pipeline.Scheduling;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>Why a task does not start earlier, in words.</summary>
internal sealed class Because(Timetable table)
{
    private readonly ILookup<int, int> waitsTo = Enumerable.Range(0, table.Posed.Problem.Waits.Length)
        .Where(w => table.Posed.Problem.Waits[w] is { Least: not null, ToEdge: Edge.Start }).ToLookup(w => table.Posed.Problem.Waits[w].To);

    /// <summary>What keeps a run from starting earlier.</summary>
    public string Of(int run) => table.Planned.Reasons[run] switch
    {
        Reason.Fact => "It has been done.",
        Reason.Pinned => "You have decided this time.",
        Reason.NotBefore => "The plan begins here.",
        Reason.Waits waits => Waits(waits, table.Runs[run]),
        Reason.UnitOrder order => $"Those before it come first, {Task(order.Run, run)}.",
        Reason.WorkerBusy busy => $"{Phrases.Capital(Hands(busy.Worker))} busy with {Name(busy.Run, run)} until {table.Said(table.Runs[busy.Run].End, table.Runs[run].Start)}.",
        Reason.ClosingDown closing => $"{Phrases.Capital(Hands(table.Runs[run].Worker))} busy cleaning the {ToolOf(closing).Name} out until {table.Said(table.Runs[run].Start, table.Runs[run].Start)}.",
        Reason.ToolHeld held => $"The {table.Posed.Problem.Tools[held.Tool].Name} is in use for {Name(held.Run, run)} until {table.Said(table.Runs[held.Run].End, table.Runs[run].Start)}.",
        Reason.PlaceFull full => $"The {table.Posed.Problem.Places[full.Place].Name} is full until {Task(full.Run, run)} makes room.",
        Reason.ReadyTooLate late when table.Runs[late.Wait.Run].Start >= table.Runs[run].Start && table.Posed.Problem.Waits[late.Wait.Wait].To == table.Runs[run].Activity => Waits(late.Wait, table.Runs[run]),
        Reason.ReadyTooLate late => $"{Waits(late.Wait, table.Runs[run], isOver: true)[..^1]}{Since(late, table.Runs[run])}",
        Reason.HadItsShare share => $"After {Task(share.Run, run)} {(table.Posed.IsEvened ? "that day got no more work, to keep the days even" : "that day had as much work as 'most-per-day' allows")}.",
        Reason.Closed { Run: >= 0 } closed when table.Runs[closed.Run].Worker != closed.Worker =>
            $"It comes after {Task(closed.Run, run)}; {Bench(closed.Worker)} before, or not for long enough.",
        Reason.Closed { Run: >= 0 } closed => $"After {Task(closed.Run, run)} too little was left of the sitting{With(closed.With, run)}.",
        Reason.Closed when table.SittingAt(table.Runs[run].Start) == table.First => "The first sitting begins here.",
        Reason.Closed closed when table.Posed.Problem.Workers[closed.Worker].Open.Open[0].Start < table.Runs[run].Start => $"The sitting before is too short{(closed.With is null ? " for it" : With(closed.With, run))}.",
        Reason.Closed closed => $"{Phrases.Capital(Bench(closed.Worker))} earlier.",
        Reason.Nothing when table.IsKept => "It could start earlier, but the plan stays close to the one before.",
        _ => table.Runs[run].Start <= 0 ? "The plan begins here." : $"It could start earlier, but {(table.Batch.Aims[0] == BatchAim.FinishSoon ? "no plan was found that ends sooner by it" : "an early finish does not come first here")}.",
    };

    /// <summary>The run that keeps a run from starting earlier; null where none does.</summary>
    public int? Before(int run) => table.Planned.Reasons[run] switch
    {
        Reason.Waits waits => waits.Run,
        Reason.UnitOrder order => order.Run,
        Reason.WorkerBusy busy => busy.Run,
        Reason.ClosingDown closing => closing.Run,
        Reason.ToolHeld held => held.Run,
        Reason.PlaceFull full => full.Run,
        Reason.ReadyTooLate late => late.Wait.Run,
        Reason.HadItsShare share => share.Run,
        Reason.Closed { Run: >= 0 } closed => closed.Run,
        _ => null,
    };

    /// <summary>The latest run before a run that its waits or its hands had to let go first, of those not known yet; null if there is none.</summary>
    public int? Precursor(int run, IReadOnlySet<int> known)
    {
        var mine = table.Runs[run];
        var byWaits = waitsTo[mine.Activity].Select(w => Ready(w, mine).Waits!.Run);
        var byHands = Enumerable.Range(0, table.Runs.Count).Where(r => table.Runs[r].Worker >= 0 && table.Runs[r].Worker == mine.Worker);
        var earlier = byWaits.Concat(byHands).Where(r => table.Runs[r].End <= mine.Start && !known.Contains(r)).Distinct().ToList();
        return earlier.Count == 0 ? null : earlier.MaxBy(r => (table.Runs[r].End, -r));
    }

    /// <summary>The wait that keeps a run from starting earlier, also through closed hours; null where it is something else.</summary>
    public Wait? WaitBefore(int run) => table.Planned.Reasons[run] switch
    {
        Reason.Waits waits => table.Posed.Problem.Waits[waits.Wait],
        Reason.ReadyTooLate late => table.Posed.Problem.Waits[late.Wait.Wait],
        _ => null,
    };

    /// <summary>A run as the cause of another: <c>'coat the suit' on Heavy diver (Sat 5 Dec 10:20)</c>; on the same day without the date.</summary>
    public string Task(int run, int seenFrom) => $"{Name(run, seenFrom)} ({table.Said(table.Runs[run].Start, table.Runs[seenFrom].Start)})";

    /// <summary>A run by its step and coat, and by its model where that is another's than the one it is seen from.</summary>
    public string Name(int run, int seenFrom)
    {
        var activity = table.Runs[run].Activity;
        var model = table.RouteOf(activity).Route.Model;
        if (table.StepOf(activity) is not { } step)
            return $"{model.Name} being ready";
        var mine = table.Posed.Activities[activity].Route == table.Posed.Activities[table.Runs[seenFrom].Activity].Route;
        return $"{Phrases.Task(model, step, table.Posed.Activities[activity].Pass)}{(mine ? "" : $" on {model.Name}")}";
    }

    private string Hands(int worker) => table.Batch.Bench.Painters.Count == 1 ? "the hands are" : $"{table.Batch.Bench.Painters[worker].Name} is";

    private Tool ToolOf(Reason.ClosingDown closing) => table.Posed.Problem.Tools[table.Planned.Schedule.CloseDowns[closing.CloseDown].Tool];

    private string Bench(int worker) => table.Batch.Bench.Painters.Count == 1 ? "nobody sits at the bench" : $"{table.Batch.Bench.Painters[worker].Name} does not sit at the bench";

    // What is over well before the run is told of its last unit, like every time up to which something is waited for; what ends as it starts, of
    // the unit that has to wait, and like that start.
    private string Waits(Reason.Waits waits, Run run, bool isOver = false)
    {
        var wait = table.Posed.Problem.Waits[waits.Wait];
        var isLater = wait.To == run.Activity;
        var other = isLater ? wait.From : wait.To;
        var route = table.RouteOf(other);
        if (table.StepOf(other) is not { } step)
            return "It is the last thing to be ready.";
        var name = Phrases.Task(route.Route.Model, step, table.Posed.Activities[other].Pass);
        if (!isLater)
            return $"It is kept close to {name} ({table.Said(table.Runs[waits.Run].Start, run.Start)}), which has to follow within {Length(wait.Greatest ?? 0)}.";
        var unit = wait.Scope == Scope.WholeLot ? table.LastUnit(other) : isOver ? run.FirstUnit + run.Units - 1 : waits.Unit;
        var since = table.At(other, unit, wait.FromEdge);
        // the wait ends where the work on the unit begins; set-up and the units before it may lie within it
        var meanwhile = run.Start >= since + (wait.Least ?? 0) ? ""
            : unit > run.FirstUnit && wait.Scope == Scope.UnitByUnit ? FormattableString.Invariant($" on no. {unit + 1}, one by one")
            : ", with its set-up meanwhile";
        var until = isOver ? table.SaidUntil(since + (wait.Least ?? 0), run.Start) : table.Said(since + (wait.Least ?? 0), run.Start);
        var when = table.IsPast(table.RunOf(other, unit)) ? $"done {table.Said(since, run.Start)}" : table.Said(since, run.Start);
        return table.Posed.Causes[wait.Reason] switch
        {
            Cause.Order order => $"It comes after {name}, done {table.Said(since, run.Start)}{meanwhile}: {order.Pair.Why}.",
            Cause.NextCoat => $"It waits until the coat before it ({when}) is recoatable: that takes {About(wait.Least ?? 0)}, until {until}{meanwhile}.",
            Cause.Ruled ruled => $"It waits for {ruled.Wait.Needs.For}: {name} ({when}) needs {About(wait.Least ?? 0)}, until {until}{meanwhile}.",
            Cause.Awaited awaited => $"It waits until {name} ({when}) is {State(awaited.State)}{meanwhile}.",
            Cause.Masked masked => $"It comes after {name}: the mask '{masked.Mask.Name}' has to be on first.",
            _ when wait.Least is null or 0 => $"It comes with the end of {name} ({table.SaidUntil(table.ReadyAt(run.Activity), run.Start)}).",
            _ => $"{Phrases.Capital(name)} ({when}) needs {About(wait.Least ?? 0)} until it {(route.Route.Model.ReadyAt == DryingState.Cured ? "has cured" : "can be handled")}.",
        };
    }

    // What has to follow in the same sitting, where only that found no room.
    private string With(int? follower, int run) => follower is { } with ? $" for it and {Name(with, run)}, which has to follow soon" : "";

    // The wait is over while nobody sits there, or within a sitting: then too little is left of that, as it stands in the plan.
    private string Since(Reason.ReadyTooLate late, Run run)
    {
        var wait = table.Posed.Problem.Waits[late.Wait.Wait];
        var painter = table.Batch.Bench.Painters.Count == 1 ? "" : $" of {table.Batch.Bench.Painters[late.Worker].Name}";
        if (wait.To != run.Activity)
            return $"; this is the first sitting{painter} that is late enough.";
        var unit = wait.Scope == Scope.WholeLot ? table.LastUnit(wait.From) : run.FirstUnit + run.Units - 1;
        var ready = table.At(wait.From, unit, wait.FromEdge) + (wait.Least ?? 0);
        var open = table.Posed.Problem.Workers[late.Worker].Open.Open.LastOrDefault(interval => interval.Start <= ready && interval.Start < run.Start);
        return open.Length > 0 && ready < table.Clock.TickAt(table.Posed.Sittings[table.SittingAt(open.Start)].End)
            ? $", and after that too little was left of the sitting{With(late.With, table.RunOf(run.Activity, run.FirstUnit))}."
            : $"; this is the next sitting{painter}.";
    }

    private (long At, Reason.Waits? Waits) Ready(int w, Run run)
    {
        var wait = table.Posed.Problem.Waits[w];
        var isWhole = wait.Scope == Scope.WholeLot;
        var unit = run.FirstUnit;
        var since = table.At(wait.From, isWhole ? table.LastUnit(wait.From) : unit, wait.FromEdge);
        return (since + (wait.Least ?? 0), new Reason.Waits(w, unit, table.RunOf(wait.From, isWhole ? table.LastUnit(wait.From) : unit)));
    }

    private static string About(long ticks) => Phrases.About(Clock.Minutes(ticks));

    private static string Length(long ticks) => Phrases.Duration(Clock.Minutes(ticks));

    /// <summary>A drying state in words.</summary>
    public static string State(DryingState state) => state switch
    {
        DryingState.TouchDry => "touch-dry",
        DryingState.Recoatable => "recoatable",
        DryingState.Handleable => "handleable",
        DryingState.MaskSafe => "mask-safe",
        DryingState.WashSafe => "wash-safe",
        _ => "cured",
    };
}
