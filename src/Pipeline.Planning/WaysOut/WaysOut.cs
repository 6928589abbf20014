using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>
/// Looks for changes with which a late batch is in time, by really planning it anew with each: pose and solve, with quick effort. Of every
/// kind the most that can be done is tried first; where even that is too late, nothing less is tried. Bounded, and in a fixed order.
/// </summary>
/// <param name="late">The plan that is late.</param>
/// <param name="request">What was asked.</param>
/// <param name="cancel">Ends the search with what was found.</param>
internal sealed class WaysOut(Timetable late, PlanRequest request, CancellationToken cancel)
{
    private const int MostBriskSteps = 4;

    private readonly Walked walked = late.Walked;
    private readonly Replanning replanning = new(request, late, cancel);

    private Bench Bench => walked.Batch.Bench;

    private IReadOnlyList<LocalDate> OpenDays => [.. OpenSittings.Between(Bench, late.Clock.Origin, LastDue).Select(sitting => sitting.Date).Distinct()];

    /// <summary>Those with which all is in time, cheapest first; if there are none, the nearest of each kind.</summary>
    public Sequence<WayOut> Find()
    {
        var tried = new List<WayOut>();
        foreach (var kind in new[] { Briskly(), Sittings(), Painters(), Leaving() })
        {
            replanning.Begin();
            tried.AddRange(kind);
        }

        var inTime = tried.Where(way => way.LateMinutes == 0).ToList();
        return inTime.Count > 0
            ? inTime.OrderBy(Cost).ThenBy(way => way.Ready.ToInstant()).ToSequence()
            : tried.Where(way => way.LateMinutes < Replanning.MostLate(late)).GroupBy(way => way.Change.GetType()).Select(kind => kind.MinBy(way => way.LateMinutes)!).OrderBy(way => way.LateMinutes).ToSequence();
    }

    // A risk at a few steps costs least, then one's own time, then another's, then a risk at every step; a model left out costs most.
    private static (int Kind, long Much) Cost(WayOut way) => way.Change switch
    {
        Change.Brisk { Steps.IsEmpty: false } brisk => (0, brisk.Steps.Count),
        Change.MoreSittings { Sittings.Count: 1 } one => (1, one.Sittings[0].Minutes),
        Change.OneMorePainter { Days.Count: 1 } => (2, 0),
        Change.MoreSittings more => (3, more.Sittings.Sum(sitting => sitting.Minutes)),
        Change.OneMorePainter more => (4, more.Days.Count),
        Change.Brisk => (5, 0),
        _ => (6, 0),
    };

    private Instant LastDue => late.Posed.Problem.Dues.Where(due => late.LateMinutes(due) > 0).Select(due => late.Clock.InstantAt(due.By)).Max();

    // Step after step on what makes the plan late, until all is in time.
    private IEnumerable<WayOut> Briskly()
    {
        if (late.Pace == Pace.Brisk)
            yield break;
        if (replanning.Anew(walked, new Pacing(walked, Pace.Brisk), Pace.Brisk) is not { } all)
            yield break;
        yield return Replanning.Way(all, new Change.Brisk([]), "plan the whole batch to the low drying figures (pace: brisk)");
        if (!all.IsInTime)
            yield break;
        var steps = new List<(int Route, int Step)>();
        var table = late;
        while (steps.Count < MostBriskSteps && Slowest(table, steps) is { } slowest)
        {
            steps.Add(slowest);
            if (replanning.Anew(walked, new Pacing(walked, late.Pace).WithSteps(steps), late.Pace) is not { } next)
                yield break;
            table = next;
            if (!table.IsInTime)
                continue;
            var named = steps.Select(at => Named(at.Route, at.Step)).ToSequence();
            yield return Replanning.Way(table, new Change.Brisk(named),
                $"follow at the low drying figure (pace: brisk) at {Phrases.Listed([.. named.Select(step => $"'{step.Step}' on {step.Model}")])}");
            yield break;
        }
    }

    private BriskStep Named(int route, int step)
    {
        var at = walked.Routes[route].Route;
        return new BriskStep(at.Model.Name, Phrases.Step(at.Model, at.Steps[step]), at.Steps[step].Place);
    }

    // Of the waits in the chains to what is late, the one that the low figure shortens most.
    private static (int Route, int Step)? Slowest(Timetable table, List<(int Route, int Step)> known)
    {
        var because = new Because(table);
        var best = (Route: -1, Step: -1);
        double most = 0;
        foreach (var due in table.Posed.Problem.Dues.Where(due => table.LateMinutes(due) > 0))
        {
            foreach (var run in Chain.Back(table, table.RunOf(due.Activity, 0)))
            {
                if (because.WaitBefore(run) is not { Reason: >= 0 } wait || table.Posed.Causes[wait.Reason] is not Cause.Ruled ruled)
                    continue;
                var waiting = Waiting.Of(ruled.Wait.Needs, table.Batch.Bench.Climate);
                var saved = (waiting.ComfortableMinutes ?? 0) - (waiting.LowMinutes ?? 0);
                var at = (ruled.Route, ruled.Wait.Needs.Step);
                if (saved > most && !known.Contains(at))
                    (best, most) = (at, saved);
            }
        }

        return most > 0 ? best : null;
    }

    private IEnumerable<WayOut> Sittings()
    {
        var spare = SpareTime.Between(Bench, late.Clock.Origin, LastDue);
        var free = spare.TakeWhile(sitting => !OpenDays.Contains(sitting.Date)).ToList();
        return Fewest(spare.Count, number => Spread(free.Count >= number ? free : spare, number), Sat);
    }

    private WayOut? Sat(IReadOnlyList<DatedSitting> sittings)
    {
        var bench = Bench with { Dated = Bench.Dated.Concat(sittings).ToSequence() };
        if (replanning.Anew(On(bench), new Pacing(walked, late.Pace), late.Pace) is not { } table)
            return null;
        var times = sittings.OrderBy(s => s.Date).Select(s => new SittingTime((s.Date + s.From).InZoneLeniently(Bench.Zone), (s.Date + s.To).InZoneLeniently(Bench.Zone))).ToSequence();
        var said = Phrases.Listed([.. times.Select(time => $"{Phrases.Moment(time.From.ToInstant(), Bench.Zone)}–{Phrases.Moment(time.To.ToInstant(), time.From.ToInstant(), Bench.Zone)}")]);
        return Replanning.Way(table, new Change.MoreSittings(times),
            times.Count == 1 ? $"one more sitting, {said}" : FormattableString.Invariant($"{times.Count} more sittings, {said}"));
    }

    private IEnumerable<WayOut> Painters() => Fewest(OpenDays.Count, number => Spread(OpenDays, number), Helped);

    private WayOut? Helped(IReadOnlyList<LocalDate> days)
    {
        var name = Bench.Painters.Count == 1 ? "a second painter" : "one more painter";
        var bench = Bench with { Painters = Bench.Painters.Append(new Painter(name, []) { Dates = days.ToSequence() }).ToSequence() };
        return replanning.Anew(On(bench), new Pacing(walked, late.Pace), late.Pace) is { } table
            ? Replanning.Way(table, new Change.OneMorePainter(days.ToSequence()), $"{name} on {Phrases.Listed([.. days.Select(Phrases.Day)])}")
            : null;
    }

    // The most work first: if leaving that out is not enough, no other model is.
    private IEnumerable<WayOut> Leaving()
    {
        var models = Enumerable.Range(0, walked.Routes.Count).Where(r => !walked.Routes[r].Route.Steps.IsEmpty).OrderBy(WorkOf).ToList();
        if (models.Count < 2 || Left(models[^1]) is not { } most)
            yield break;
        if (most.LateMinutes == 0)
        {
            foreach (var model in models.SkipLast(1))
            {
                if (Left(model) is not { } way)
                    break;
                if (way.LateMinutes > 0)
                    continue;
                yield return way;
                yield break;
            }
        }

        yield return most;
    }

    private double WorkOf(int route) => walked.Routes[route].Route.Steps.Sum(step =>
        step.Work.SetUp.Minutes + step.Work.PutAway.Minutes + (step.Work.PerUnit.Minutes * (step.Work.Together ? 1 : walked.Routes[route].Route.Model.Count)));

    private WayOut? Left(int route)
    {
        var model = walked.Routes[route].Route.Model.Name;
        var kits = walked.Batch.Kits.Select(kit => kit with { Routes = kit.Routes.Where(r => r.Model.Name != model).ToSequence() });
        var without = walked with
        {
            Batch = walked.Batch with { Kits = kits.ToSequence() },
            Routes = walked.Routes.Where((_, r) => r != route).ToSequence(),
        };
        return replanning.Anew(without, new Pacing(without, late.Pace), late.Pace) is { } table
            ? Replanning.Way(table, new Change.LeaveOut(model), $"leave {model} for later")
            : null;
    }

    private Walked On(Bench bench) => walked with { Batch = walked.Batch with { Bench = bench } };

    // All that could be added first; then by halving how few are enough; of single ones a second to choose from.
    private static IEnumerable<WayOut> Fewest<T>(int most, Func<int, IReadOnlyList<T>> some, Func<IReadOnlyList<T>, WayOut?> plan)
    {
        if (most == 0 || plan(some(most)) is not { } best)
            yield break;
        var (low, high) = (1, best.LateMinutes > 0 ? 1 : most);
        while (low < high && plan(some((low + high) / 2)) is { } way)
        {
            if (way.LateMinutes == 0)
                (best, high) = (way, (low + high) / 2);
            else
                low = ((low + high) / 2) + 1;
        }

        yield return best;
        if (high > 1 || most == 1 || best.LateMinutes > 0)
            yield break;
        foreach (var other in some(2))
        {
            if (plan([other]) is { LateMinutes: 0 } way && way.Words != best.Words)
                yield return way;
        }
    }

    // So many of a list, from all over it.
    private static IReadOnlyList<T> Spread<T>(IReadOnlyList<T> list, int number) =>
        number >= list.Count ? list : [.. Enumerable.Range(0, number).Select(i => list[((2 * i) + 1) * list.Count / (2 * number)])];
}
