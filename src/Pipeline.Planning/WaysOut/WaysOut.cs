using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Scheduling;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>
/// Looks for changes with which a late batch is in time, by really planning it anew with each: pose and solve, with quick effort. Of every
/// kind the most that can be done is tried first, then how little of it does as much. What is told of was planned the way the changed file is.
/// Bounded, and in a fixed order.
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

    /// <summary>
    /// Those with which all is in time, cheapest first; if there are none, or none but leaving a model for later, then the nearest of each other kind.
    /// </summary>
    public Sequence<WayOut> Find()
    {
        var tried = new List<WayOut>();
        // which steps is found in more rounds than how many evenings
        foreach (var (kind, more) in new[] { (Briskly(), BriskRounds), (Sittings(), 0), (Painters(), 0), (Leaving(), 0) })
        {
            replanning.Begin(more);
            foreach (var (changed, change, words) in kind)
            {
                if (replanning.AsAsked(changed) is { } table)
                    tried.Add(Replanning.Way(table, change, words));
            }
        }

        var some = tried.Where(way => !tried.Exists(other => IsMoreThan(way, other))).ToList();
        var inTime = some.Where(way => way.LateMinutes == 0).ToList();
        var nearest = inTime.Exists(way => way.Change is not Change.LeaveOut) ? [] : some
            .Where(way => way.LateMinutes > 0 && way.LateMinutes < Replanning.MostLate(late) && !inTime.Exists(each => each.Change.GetType() == way.Change.GetType()))
            .GroupBy(way => way.Change.GetType()).Select(kind => kind.OrderBy(way => way.LateMinutes).ThenBy(Cost).First());
        return inTime.OrderBy(Cost).ThenBy(way => way.Ready.ToInstant()).Concat(nearest.OrderBy(way => way.LateMinutes).ThenBy(Cost)).ToSequence();
    }

    // The same kind of thing done more of, for nothing.
    private static bool IsMoreThan(WayOut way, WayOut less) =>
        way.Change.GetType() == less.Change.GetType() && Cost(less).Kind < Cost(way).Kind && less.LateMinutes <= way.LateMinutes
        && less.Ready.ToInstant() <= way.Ready.ToInstant() && (way.FillsSittings || !less.FillsSittings);

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

    // The whole batch first; then only what makes the plan late, and of that the fewest steps that do as much, those that save most.
    private IEnumerable<(Changed, Change, string)> Briskly()
    {
        var whole = new Changed(walked, new Pacing(walked, Pace.Brisk), Pace.Brisk);
        if (late.Pace == Pace.Brisk || replanning.Anew(whole) is not { } all)
            yield break;
        yield return (whole, new Change.Brisk([]), "plan the whole batch to the low drying figures (pace: brisk)");
        if (Replanning.MostLate(all) >= Replanning.MostLate(late))
            yield break;
        var steps = Slow(late, []).ToList();
        for (var rounds = 0; rounds < BriskRounds && steps.Count > 0; rounds++)
        {
            if (replanning.Anew(AtSteps(steps)) is not { } some)
                yield break;
            if (Replanning.MostLate(some) <= Replanning.MostLate(all))
            {
                foreach (var few in new Fewest<(int Route, int Step)>(steps, at => replanning.Anew(AtSteps(at)), table => Slow(table, [])).Of(late, choices: 1, some))
                    yield return Brisk(few);
                yield break;
            }

            // with those brisk, something else makes it late
            steps.AddRange(Slow(some, steps));
        }
    }

    private Changed AtSteps(IEnumerable<(int Route, int Step)> steps) => new(walked, new Pacing(walked, late.Pace).WithSteps(steps), late.Pace);

    private (Changed, Change, string) Brisk(Chosen<(int Route, int Step)> few)
    {
        var named = few.Members.Select(at => Named(at.Route, at.Step)).ToSequence();
        List<string> ofModels = [.. few.Members.GroupBy(at => at.Route).Select(mine =>
            $"{Phrases.Listed([.. mine.Select(at => FindableStep.In(walked.Routes[at.Route].Route, at.Step)).Distinct()])} on {walked.Routes[mine.Key].Route.Model.Name}")];
        return (AtSteps(few.Members), new Change.Brisk(named), Words(few, $"follow at the low drying figure (pace: brisk) at {Phrases.Listed(ofModels)}"));
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
                if (because.WaitBefore(run) is { Reason: >= 0 } wait && Shortened(table, wait) is var (at, minutes) && minutes >= 1 && !known.Contains(at))
                    saved[at] = Math.Max(saved.GetValueOrDefault(at), minutes);
            }
        }

        return saved.OrderByDescending(each => each.Value).ThenBy(each => each.Key).Select(each => each.Key);
    }

    /// <summary>The step that waits, and by how many minutes the low figure shortens that wait as it is planned; null where it has no two figures.</summary>
    public static ((int Route, int Step) At, double Minutes)? Shortened(Timetable table, Wait wait)
    {
        var bench = table.Batch.Bench;
        var planned = Clock.Minutes(wait.Least ?? 0);
        switch (table.Posed.Causes[wait.Reason])
        {
            case Cause.Ruled ruled:
                return ((ruled.Route, ruled.Wait.Needs.Step), planned - Waiting.Of(ruled.Wait.Needs, bench.Climate).LowMinutes ?? 0);
            case Cause.NextCoat coat:
                return ((coat.Route, coat.Step), planned - Passing.Between(table.Walked.Routes[coat.Route].Route.Steps[coat.Step], bench, Pace.Brisk));
            default:
                return null;
        }
    }

    private IEnumerable<(Changed, Change, string)> Sittings()
    {
        var spare = SpareTime.Between(Bench, late.Clock.Origin, LastDue);
        return new Fewest<DatedSitting>(spare, some => replanning.Anew(Sat(some)), table => HeldUp.ForSittings(table, spare)).Of(late, Choices).Select(Sittings);
    }

    private Changed Sat(IReadOnlyList<DatedSitting> sittings) => On(Bench with { Dated = Bench.Dated.Concat(sittings).ToSequence() });

    private (Changed, Change, string) Sittings(Chosen<DatedSitting> few)
    {
        var sittings = few.Members;
        var times = sittings.OrderBy(s => s.Date).Select(s => new SittingTime((s.Date + s.From).InZoneLeniently(Bench.Zone), (s.Date + s.To).InZoneLeniently(Bench.Zone))).ToSequence();
        var named = times.Select(time => $"{Phrases.Moment(time.From.ToInstant(), Bench.Zone)}–{Phrases.Moment(time.To.ToInstant(), time.From.ToInstant(), Bench.Zone)}").ToList();
        var words = named.Count == 1 ? $"one more sitting, {named[0]}"
            : named.Count <= MostNamed ? FormattableString.Invariant($"{named.Count} more sittings, {Phrases.Listed(named)}")
            : FormattableString.Invariant($"{named.Count} more sittings, the first {named[0]}, the last {named[^1]}");
        return (Sat(few.Members), new Change.MoreSittings(times), Words(few, words));
    }

    private IEnumerable<(Changed, Change, string)> Painters() =>
        new Fewest<LocalDate>(OpenDays, days => replanning.Anew(Helped(days)), HeldUp.ForHands).Of(late, Choices).Select(Painters);

    private string Helper => Bench.Painters.Count == 1 ? "a second painter" : "one more painter";

    private Changed Helped(IReadOnlyList<LocalDate> days) =>
        On(Bench with { Painters = Bench.Painters.Append(new Painter(Helper, []) { Dates = days.ToSequence() }).ToSequence() });

    private (Changed, Change, string) Painters(Chosen<LocalDate> few)
    {
        var days = few.Members;
        return (Helped(days), new Change.OneMorePainter(days.ToSequence()), Words(few, days.Count <= MostNamed
            ? $"{Helper} on {Phrases.Listed([.. days.Select(Phrases.Day)])}"
            : FormattableString.Invariant($"{Helper} on {days.Count} days from {Phrases.Day(days[0])} to {Phrases.Day(days[^1])}")));
    }

    // Where there were no plans left to try it, it is not said to be the least.
    private static string Words<T>(Chosen<T> few, string words) => few.IsLeast ? words : $"{words} (fewer may do)";

    // The only late one, else the one with the most work: if leaving that out is enough, a smaller one may be, too; if not, one that is late by itself.
    private IEnumerable<(Changed, Change, string)> Leaving()
    {
        var models = Enumerable.Range(0, walked.Routes.Count).Where(r => !walked.Routes[r].Route.Steps.IsEmpty).OrderBy(WorkOf).ToList();
        if (models.Count < 2)
            yield break;
        var lateOnes = models.FindAll(IsLate);
        var first = lateOnes.Count == 1 ? lateOnes[0] : models[^1];
        if (replanning.Anew(Without(first)) is not { } nearest)
            yield break;
        var model = first;
        foreach (var other in nearest.IsInTime ? models.TakeWhile(each => each != first) : lateOnes.Where(each => each != first))
        {
            if (replanning.Anew(Without(other)) is not { } table)
                break;
            if (table.IsInTime || Replanning.MostLate(table) < Replanning.MostLate(nearest))
                (model, nearest) = (other, table);
            if (table.IsInTime)
                break;
        }

        var name = walked.Routes[model].Route.Model.Name;
        yield return (Without(model), new Change.LeaveOut(name), $"leave {name} for later");
    }

    private bool IsLate(int route) => late.Posed.Problem.Dues.Any(due => late.Posed.Activities[due.Activity].Route == route && late.LateMinutes(due) > 0);

    private double WorkOf(int route) => walked.Routes[route].Route.Steps.Sum(step =>
        step.Work.PassOver(walked.Routes[route].Route.Model.Count).Minutes * step.Work.Passes);

    private Changed Without(int route)
    {
        var model = walked.Routes[route].Route.Model.Name;
        var kits = walked.Batch.Kits.Select(kit => kit with { Routes = kit.Routes.Where(r => r.Model.Name != model).ToSequence() });
        var without = walked with
        {
            Batch = walked.Batch with { Kits = kits.ToSequence() },
            Routes = walked.Routes.Where((_, r) => r != route).ToSequence(),
        };
        return new Changed(without, new Pacing(without, late.Pace), late.Pace);
    }

    private Changed On(Bench bench) => new(walked with { Batch = walked.Batch with { Bench = bench } }, new Pacing(walked, late.Pace), late.Pace);
}
