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
    private const int BriskRounds = 2;
    private const int FewSteps = 3;

    // Of single evenings that help so many are told, to choose from.
    private const int Choices = 2;

    // More days than this say less than their number.
    private const int MostNamed = 7;

    private readonly Walked walked = late.Walked;
    private readonly Replanning replanning = new(request, late, cancel);

    private Bench Bench => walked.Batch.Bench;

    private IReadOnlyList<LocalDate> OpenDays => [.. OpenSittings.Between(Bench, late.Clock.Origin, LastDue).Select(sitting => sitting.Date).Distinct()];

    /// <summary>Those with which all is in time, cheapest first; if there are none, the nearest of each kind.</summary>
    public Sequence<WayOut> Find()
    {
        var tried = new List<WayOut>();
        // which steps is found in more rounds than how many evenings
        foreach (var (kind, more) in new[] { (Briskly(), BriskRounds), (Sittings(), 0), (Painters(), 0), (Leaving(), 0) })
        {
            replanning.Begin(more);
            tried.AddRange(kind);
        }

        var inTime = tried.Where(way => way.LateMinutes == 0).ToList();
        return inTime.Count > 0
            ? inTime.OrderBy(Cost).ThenBy(way => way.Ready.ToInstant()).ToSequence()
            : tried.Where(way => way.LateMinutes < Replanning.MostLate(late)).GroupBy(way => way.Change.GetType()).Select(kind => kind.MinBy(way => way.LateMinutes)!).OrderBy(way => way.LateMinutes).ToSequence();
    }

    // A risk at a few steps costs least, then an evening of one's own, then one of another's, then a risk at many steps and more evenings;
    // a risk at every step costs more, and a model left out most.
    private static (int Kind, long Much) Cost(WayOut way) => way.Change switch
    {
        Change.Brisk { Steps.Count: > 0 and <= FewSteps } brisk => (0, brisk.Steps.Count),
        Change.MoreSittings { Sittings.Count: 1 } one => (1, one.Sittings[0].Minutes),
        Change.OneMorePainter { Days.Count: 1 } => (2, 0),
        Change.Brisk { Steps.Count: > FewSteps } brisk => (3, brisk.Steps.Count),
        Change.MoreSittings more => (4, more.Sittings.Sum(sitting => sitting.Minutes)),
        Change.OneMorePainter more => (5, more.Days.Count),
        Change.Brisk => (6, 0),
        _ => (7, 0),
    };

    private Instant LastDue => late.Posed.Problem.Dues.Where(due => late.LateMinutes(due) > 0).Select(due => late.Clock.InstantAt(due.By)).Max();

    // The whole batch first; then only what makes the plan late, and of that the fewest steps, those that save most.
    private IEnumerable<WayOut> Briskly()
    {
        if (late.Pace == Pace.Brisk || replanning.Anew(walked, new Pacing(walked, Pace.Brisk), Pace.Brisk) is not { } all)
            yield break;
        yield return Replanning.Way(all, new Change.Brisk([]), "plan the whole batch to the low drying figures (pace: brisk)");
        if (!all.IsInTime)
            yield break;
        var steps = Slow(late, []).ToList();
        for (var rounds = 0; rounds < BriskRounds && steps.Count > 0; rounds++)
        {
            if (AtSteps(steps) is not { } some)
                yield break;
            if (some.IsInTime)
            {
                foreach (var few in new Fewest<(int Route, int Step)>(steps, AtSteps, table => Slow(table, [])).Of(late, choices: 1, some))
                    yield return Brisk(few);
                yield break;
            }

            // with those brisk, something else makes it late
            steps.AddRange(Slow(some, steps));
        }
    }

    private Timetable? AtSteps(IEnumerable<(int Route, int Step)> steps) =>
        replanning.Anew(walked, new Pacing(walked, late.Pace).WithSteps(steps), late.Pace);

    private WayOut Brisk(Chosen<(int Route, int Step)> few)
    {
        var named = few.Members.Select(at => Named(at.Route, at.Step)).ToSequence();
        List<string> ofModels = [.. few.Members.GroupBy(at => at.Route).Select(mine =>
            $"{Phrases.Listed([.. mine.Select(at => FindableStep.In(walked.Routes[at.Route].Route, at.Step)).Distinct()])} on {walked.Routes[mine.Key].Route.Model.Name}")];
        return Way(few, new Change.Brisk(named), $"follow at the low drying figure (pace: brisk) at {Phrases.Listed(ofModels)}");
    }

    private BriskStep Named(int route, int step)
    {
        var at = walked.Routes[route].Route;
        return new BriskStep(at.Model.Name, Phrases.Step(at.Model, at.Steps[step]), at.Steps[step].Place);
    }

    // The waits in the chains to what is late that the low figure shortens, the most saved first.
    private static IEnumerable<(int Route, int Step)> Slow(Timetable table, List<(int Route, int Step)> known)
    {
        var because = new Because(table);
        var saved = new Dictionary<(int Route, int Step), double>();
        foreach (var due in table.Posed.Problem.Dues.Where(due => table.LateMinutes(due) > 0))
        {
            foreach (var run in Chain.Back(table, table.RunOf(due.Activity, 0)))
            {
                if (because.WaitBefore(run) is { Reason: >= 0 } wait && Shortened(table, table.Posed.Causes[wait.Reason]) is var (at, minutes) && minutes > 0 && !known.Contains(at))
                    saved[at] = Math.Max(saved.GetValueOrDefault(at), minutes);
            }
        }

        return saved.OrderByDescending(each => each.Value).ThenBy(each => each.Key).Select(each => each.Key);
    }

    private static ((int Route, int Step) At, double Minutes)? Shortened(Timetable table, Cause cause)
    {
        var bench = table.Batch.Bench;
        switch (cause)
        {
            case Cause.Ruled ruled:
                var waiting = Waiting.Of(ruled.Wait.Needs, bench.Climate);
                return ((ruled.Route, ruled.Wait.Needs.Step), waiting.ComfortableMinutes - waiting.LowMinutes ?? 0);
            case Cause.NextCoat coat:
                var step = table.Walked.Routes[coat.Route].Route.Steps[coat.Step];
                return ((coat.Route, coat.Step), Passing.Between(step, bench, Pace.Comfortable) - Passing.Between(step, bench, Pace.Brisk));
            default:
                return null;
        }
    }

    private IEnumerable<WayOut> Sittings()
    {
        var spare = SpareTime.Between(Bench, late.Clock.Origin, LastDue);
        return new Fewest<DatedSitting>(spare, Sat, table => HeldUp.ForSittings(table, spare)).Of(late, Choices).Select(Sittings);
    }

    private Timetable? Sat(IReadOnlyList<DatedSitting> sittings) =>
        replanning.Anew(On(Bench with { Dated = Bench.Dated.Concat(sittings).ToSequence() }), new Pacing(walked, late.Pace), late.Pace);

    private WayOut Sittings(Chosen<DatedSitting> few)
    {
        var sittings = few.Members;
        var times = sittings.OrderBy(s => s.Date).Select(s => new SittingTime((s.Date + s.From).InZoneLeniently(Bench.Zone), (s.Date + s.To).InZoneLeniently(Bench.Zone))).ToSequence();
        var named = times.Select(time => $"{Phrases.Moment(time.From.ToInstant(), Bench.Zone)}–{Phrases.Moment(time.To.ToInstant(), time.From.ToInstant(), Bench.Zone)}").ToList();
        var words = named.Count == 1 ? $"one more sitting, {named[0]}"
            : named.Count <= MostNamed ? FormattableString.Invariant($"{named.Count} more sittings, {Phrases.Listed(named)}")
            : FormattableString.Invariant($"{named.Count} more sittings, the first {named[0]}, the last {named[^1]}");
        return Way(few, new Change.MoreSittings(times), words);
    }

    private IEnumerable<WayOut> Painters() => new Fewest<LocalDate>(OpenDays, Helped, HeldUp.ForHands).Of(late, Choices).Select(Painters);

    private string Helper => Bench.Painters.Count == 1 ? "a second painter" : "one more painter";

    private Timetable? Helped(IReadOnlyList<LocalDate> days)
    {
        var bench = Bench with { Painters = Bench.Painters.Append(new Painter(Helper, []) { Dates = days.ToSequence() }).ToSequence() };
        return replanning.Anew(On(bench), new Pacing(walked, late.Pace), late.Pace);
    }

    private WayOut Painters(Chosen<LocalDate> few)
    {
        var days = few.Members;
        return Way(few, new Change.OneMorePainter(days.ToSequence()), days.Count <= MostNamed
            ? $"{Helper} on {Phrases.Listed([.. days.Select(Phrases.Day)])}"
            : FormattableString.Invariant($"{Helper} on {days.Count} days from {Phrases.Day(days[0])} to {Phrases.Day(days[^1])}"));
    }

    // Where there were no plans left to try it, it is not said to be the least.
    private static WayOut Way<T>(Chosen<T> few, Change change, string words) =>
        Replanning.Way(few.Table, change, few.IsLeast ? words : $"{words} (fewer may do)");

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
        step.Work.PassOver(walked.Routes[route].Route.Model.Count).Minutes * step.Work.Passes);

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
}
