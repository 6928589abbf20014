using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Scheduling;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>From a walked batch to days, sittings and tasks. Pure: the same input gives the same plan on every machine.</summary>
public static class Planner
{
    private static readonly Instant Earliest = Instant.FromUtc(1900, 1, 1, 0, 0);
    private static readonly Instant Latest = Instant.FromUtc(9000, 1, 1, 0, 0);

    /// <summary>Plans a batch.</summary>
    /// <param name="walked">The batch, walked without an error.</param>
    /// <param name="trade">What the plugins brought, for the clean-out times.</param>
    /// <param name="request">From when, how hard to try.</param>
    /// <param name="cancel">Stops the search; the best plan so far is returned, if there is one.</param>
    /// <returns>
    /// A plan, or the reasons why there is none. A missed due time is not a reason: the plan then has the earliest day found, and a finding of
    /// level error.
    /// </returns>
    public static PlanOutcome Plan(Walked walked, Trade trade, PlanRequest request, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(walked);
        ArgumentNullException.ThrowIfNull(trade);
        ArgumentNullException.ThrowIfNull(request);
        var pace = request.Pace ?? walked.Batch.Pace;
        var before = Before(walked, request.From);
        if (before.Any(finding => finding.Level == Level.Error))
            return new PlanOutcome.NoPlan(before.Where(finding => finding.Level == Level.Error).ToSequence());
        var outcome = WithSlack(walked, trade, request, pace, new HashSet<int>(), cancel);
        if (outcome is PlanOutcome.NoPlan && pace == Pace.Comfortable && Decided(walked) is { Count: > 0 } decided)
        {
            // decided times may leave room for the shortest waits only; the plan then says what that risks
            var closer = WithSlack(walked, trade, request, pace, decided, cancel);
            outcome = closer is PlanOutcome.Planned ? closer : outcome;
        }

        return outcome;
    }

    private static HashSet<int> Decided(Walked walked) =>
        [.. Enumerable.Range(0, walked.Routes.Count).Where(r => !walked.Routes[r].Route.Pins.IsEmpty)];

    // What needs no search to be seen.
    private static List<Finding> Before(Walked walked, Instant from)
    {
        var bench = walked.Batch.Bench;
        var findings = new List<Finding>();
        if (from < Earliest || from > Latest)
        {
            // near the ends of the calendar there is no looking ahead
            return [new Finding { Level = Level.Error, Place = bench.Place, Message = "A plan can begin from the year 1900 to the year 9000.", Remedy = "Give another time to plan from." }];
        }

        if (walked.Routes.Any(route => !route.Route.Steps.IsEmpty) && Horizon.HasNoSitting(bench, from))
        {
            findings.Add(new Finding
            {
                Level = Level.Error,
                Place = bench.Place,
                Message = $"There is no sitting after {Phrases.Moment(from, bench.Zone)}, so nothing can be planned.",
                Remedy = "Add sittings to the bench, such as - { days: mon-fri, from: 19:00, to: 21:00 }.",
            });
        }

        foreach (var route in walked.Routes.Select(r => r.Route))
        {
            foreach (var pin in route.Pins.Where(pin => Pinned.At(pin, bench.Zone) < from))
            {
                findings.Add(new Finding
                {
                    Level = Level.Error,
                    Place = pin.Place,
                    Model = route.Model.Name,
                    Message = $"'{Phrases.Step(route.Model, route.Steps[pin.Step])}' is set for {Phrases.Moment(Pinned.At(pin, bench.Zone), bench.Zone)}, and the plan begins {Phrases.Moment(from, bench.Zone)}.",
                    Remedy = "Move the decided time, or plan from an earlier moment.",
                });
            }
        }

        findings.AddRange(SharesUnsaid(walked));
        findings.AddRange(TimeJudge.JudgePins(walked));
        return findings;
    }

    // How much thinner to measure out is never guessed.
    private static IEnumerable<Finding> SharesUnsaid(Walked walked)
    {
        var laid = new HashSet<string>(StringComparer.Ordinal);
        var open = new Stack<Paint>(walked.Routes.SelectMany(route => route.Route.Steps).SelectMany(step => step.Lays).Select(lay => lay.Layer.Paint).OfType<Paint>());
        while (open.TryPop(out var paint))
        {
            if (paint.Recipe is not { } recipe || !laid.Add(paint.Name))
                continue;
            foreach (var part in recipe.Parts)
                open.Push(part.Paint);
            if (recipe.Thinner is not { Of: null } thinner)
                continue;
            yield return new Finding
            {
                Level = Level.Error,
                Place = thinner.Place ?? paint.Place,
                Message = $"Nobody can measure out {paint.Name}: its {thinner.Share} of {thinner.With} may be of the mix or of the paint.",
                Remedy = "Say which: add 'of: mix' or 'of: paint' beside the share.",
            };
        }
    }

    // A part of each sitting stays free unless no due time can be met that way: those come first, and the plan then says how full it is.
    private static PlanOutcome WithSlack(Walked walked, Trade trade, PlanRequest request, Pace pace, HashSet<int> brisk, CancellationToken cancel)
    {
        var slack = pace == Pace.Comfortable ? walked.Batch.Bench.Slack.Fraction : 0;
        var outcome = WithPace(walked, trade, request, pace, brisk, slack, cancel);
        if (slack == 0 || IsInTime(outcome) || cancel.IsCancellationRequested)
            return outcome;
        var filled = WithPace(walked, trade, request, pace, brisk, slack: 0, cancel);
        return IsInTime(filled) || (outcome is PlanOutcome.NoPlan && filled is PlanOutcome.Planned) ? filled : outcome;
    }

    private static bool IsInTime(PlanOutcome outcome) =>
        outcome is PlanOutcome.Planned { Plan: var plan } && plan.Finishes.All(finish => finish.Due is not { } due || finish.Ready.ToInstant() <= due.ToInstant());

    private static PlanOutcome WithPace(
        Walked walked, Trade trade, PlanRequest request, Pace pace, HashSet<int> brisk, double slack, CancellationToken cancel)
    {
        var posing = new Posing(walked, trade, request.From, pace, brisk, slack);
        var horizon = new Horizon(walked, request.From, pace);
        while (true)
        {
            var posed = posing.Until(horizon.Until);
            if (posing.Findings.Count > 0)
                return new PlanOutcome.NoPlan(posing.Findings.ToSequence());
            var outcome = Solver.Solve(posed.Problem, EffortOf(request.Effort), Seed(request.Seed), ProgressOf(request, posed.Clock), cancel);
            if (outcome is Outcome.Planned planned)
                return new PlanOutcome.Planned(PlanLayOut.Of(new Timetable(walked, posed, planned, pace), trade));
            var obstacles = ((Outcome.Impossible)outcome).Obstacles;
            if (!cancel.IsCancellationRequested && obstacles.Any(o => o is Obstacle.OpenHoursEnd or Obstacle.NotFound) && horizon.TryExtend(posed.Sittings.Length))
                continue;
            return new PlanOutcome.NoPlan(Hindrances.Of(walked, posed, obstacles));
        }
    }

    private static Scheduling.Effort EffortOf(SearchEffort effort) => effort switch
    {
        SearchEffort.Quick => Scheduling.Effort.Quick,
        SearchEffort.Thorough => Scheduling.Effort.Thorough,
        _ => Scheduling.Effort.Usual,
    };

    private static int Seed(ulong seed) => (int)((seed ^ (seed >> 32)) & int.MaxValue);

    private static Forward? ProgressOf(PlanRequest request, Clock clock) =>
        request.Progress is { } progress ? new Forward(progress, clock) : null;

    // Told on the calling thread, in order: no queue in between.
    private sealed class Forward(IProgress<PlanProgress> progress, Clock clock) : IProgress<SolveProgress>
    {
        public void Report(SolveProgress value) => progress.Report(new PlanProgress(
            clock.InstantAt(value.Best.Finish),
            clock.InstantAt(value.Bound),
            value.Budget <= 0 ? 0 : Math.Clamp((double)value.Work / value.Budget, 0, 1)));
    }
}
