using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>From a walked batch to days, sittings and tasks. Pure: the same input gives the same plan, however busy the machine is.</summary>
public static class Planner
{
    private static readonly Instant Earliest = Instant.FromUtc(1900, 1, 1, 0, 0);
    private static readonly Instant Latest = Instant.FromUtc(9000, 1, 1, 0, 0);

    /// <summary>Plans a batch.</summary>
    /// <param name="walked">The batch, walked without an error.</param>
    /// <param name="trade">What the plugins brought.</param>
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
        var done = request.DoneWork;
        var said = done is null ? [] : DoneSteps.Said(walked, request.Keep!, done).ToSequence();
        if (done is not null)
            walked = DoneSteps.WithoutPins(walked, done);
        var pace = request.Pace ?? walked.Batch.Pace;
        var before = Before(walked, request.From, done);
        if (before.Any(finding => finding.Level == Level.Error))
            return new PlanOutcome.NoPlan(before.Where(finding => finding.Level == Level.Error).ToSequence());
        var attempt = new Attempt(walked, request, pace, cancel);
        var pacing = new Pacing(walked, pace);
        // no search finds room for these; where times are decided a closer pace may, and what has begun is not given up
        if (done is null && walked.Routes.All(route => route.Route.Pins.IsEmpty) && UnkeepableWaits.At(walked, pacing) is { IsEmpty: false } unkeepable)
            return new PlanOutcome.NoPlan(unkeepable);
        var trial = attempt.AsAsked(pacing);
        if (trial is not Trial.Found { Table: var table })
            return new PlanOutcome.NoPlan(((Trial.None)trial).Said.Value.Concat(said).ToSequence());
        var isStopped = cancel.IsCancellationRequested;
        var waysOut = table.IsInTime || !request.WithWaysOut ? [] : new WaysOut(table, request, cancel).Find();
        var plan = PlanLayOut.Of(table, trade, done) with { WaysOut = waysOut };
        plan = plan with { Findings = [.. plan.Findings, .. said, .. LeftLoaded.In(table)] };
        // what was found before may have been searched to its end, and what comes after it not at all
        if (isStopped)
            plan = plan with { Measure = plan.Measure with { StoppedEarly = true } };
        if (request.Keep is { } earlier)
            plan = plan with { Kept = PlanComparison.Of(earlier, WrittenPlan.Of(plan)) };
        return new PlanOutcome.Planned(plan, new PlanReasons(table, plan.Finishes));
    }

    // What needs no search to be seen.
    private static List<Finding> Before(Walked walked, Instant from, DoneWork? done)
    {
        var bench = walked.Batch.Bench;
        var findings = new List<Finding>();
        if (from < Earliest || from > Latest)
        {
            // near the ends of the calendar there is no looking ahead
            return [new Finding { Level = Level.Error, Place = bench.Place, Message = "A plan can begin from the year 1900 to the year 9000.", Remedy = "Give another time to plan from." }];
        }

        if (walked.Routes.Any(route => !route.Route.Steps.IsEmpty && (done is null || !DoneSteps.AreAll(route, done))) && Horizon.HasNoSitting(bench, from))
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
}
