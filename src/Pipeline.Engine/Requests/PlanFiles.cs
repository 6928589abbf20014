using MediatR;
using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Planning;
using Pipeline.Workflows;

namespace Pipeline.Engine;

/// <summary>Asks for a plan for one or more files, taken together as one batch.</summary>
/// <param name="Inputs">At least one.</param>
/// <param name="From">
/// Nothing is planned before this, in the bench's zone; null for the time up to which work is done, and if none is given for now, rounded up to
/// the next five minutes. A time the clocks skip
/// counts as much later as they skip; of a time that comes twice the first counts.
/// </param>
/// <param name="Pace">Overrides the file's pace; null to keep it.</param>
/// <param name="Effort">How hard to look for a better plan.</param>
/// <param name="Seed">The same seed gives the same plan.</param>
/// <param name="WithWaysOut">True to look for ways out where a due time is missed.</param>
/// <param name="Keep">A file with a plan of the same batch, as JSON, to stay close to; null for none.</param>
/// <param name="Done">
/// With <paramref name="Keep"/>: what that plan has ended by then has been done, in the bench's zone; null for what it takes as done itself.
/// Nothing is planned before it.
/// </param>
public sealed record PlanFiles(
    Sequence<WorkflowInput> Inputs,
    LocalDateTime? From = null,
    Pace? Pace = null,
    SearchEffort Effort = SearchEffort.Usual,
    ulong Seed = 1,
    bool WithWaysOut = true,
    string? Keep = null,
    LocalDateTime? Done = null) : IRequest<Answer<PlanResult>>;

/// <summary>What came of asking for a plan.</summary>
public abstract record PlanResult(Checked Checked)
{
    private protected abstract void Closed();

    /// <summary>The files have errors; nothing was planned.</summary>
    public sealed record Unsound(Checked Checked) : PlanResult(Checked)
    {
        private protected override void Closed() { }
    }

    /// <summary>A plan.</summary>
    /// <param name="Checked">What checking gave.</param>
    /// <param name="Plan">The plan.</param>
    /// <param name="Reasons">Answers why it is as it is.</param>
    public sealed record Planned(Checked Checked, Plan Plan, PlanReasons Reasons) : PlanResult(Checked)
    {
        /// <summary>True if some model is ready later than it is due.</summary>
        public bool IsLate => Plan.Finishes.Any(finish => finish.Due is { } due && finish.Ready.ToInstant() > due.ToInstant());

        private protected override void Closed() { }
    }

    /// <summary>No plan satisfies the constraints.</summary>
    public sealed record Impossible(Checked Checked, PlanOutcome.NoPlan Outcome) : PlanResult(Checked)
    {
        private protected override void Closed() { }
    }
}

/// <summary>The search is getting on; published while <see cref="PlanFiles"/> is answered.</summary>
/// <param name="Progress">How.</param>
/// <param name="Zone">The bench's zone.</param>
public sealed record PlanProgressed(PlanProgress Progress, DateTimeZone Zone) : INotification;

internal sealed class PlanFilesHandler(CheckFilesHandler check, WrittenPlans plans, PluginShelf plugins, IClock clock, IMediator mediator)
    : IRequestHandler<PlanFiles, Answer<PlanResult>>
{
    private const int StartsOnMinutes = 5;

    public Task<Answer<PlanResult>> Handle(PlanFiles request, CancellationToken cancellationToken) =>
        Task.FromResult(check.Check(new CheckFiles(request.Inputs)) switch
        {
            Answer<Checked>.Given given => Answered(given.Value, request, cancellationToken),
            Answer<Checked>.Refused refused => new Answer<PlanResult>.Refused(refused.Why),
            var other => throw new InvalidOperationException($"Unknown answer {other}."),
        });

    private Answer<PlanResult> Answered(Checked done, PlanFiles request, CancellationToken cancel)
    {
        var (keep, refusal) = Kept(done, request);
        return refusal is null ? new Answer<PlanResult>.Given(Plan(done, request, keep, cancel)) : new Answer<PlanResult>.Refused([refusal]);
    }

    /// <summary>The plan to stay close to, or why it cannot be; neither if none is asked for.</summary>
    /// <param name="done">What checking gave.</param>
    /// <param name="request">How to plan.</param>
    public (WrittenPlan? Keep, Refusal? Refusal) Kept(Checked done, PlanFiles request)
    {
        if (request.Keep is not { } path)
            return (null, request.Done is null ? null : new Refusal("no plan says what is done by then", "Give the plan on the wall, too: --keep PLAN.json."));
        var (keep, refusal) = plans.Read(path);
        if (keep is null || done.Walked is not { } walked)
            return (keep, refusal);
        return keep.Batch != walked.Batch.Name
            ? (null, new Refusal($"{path} is a plan of '{Faults.OnOneLine(keep.Batch)}', and this is '{Faults.OnOneLine(walked.Batch.Name)}'", "Give a plan that was made of this batch."))
            : (keep, DoneTime.Refused(keep, path, walked.Batch.Bench.Zone, request, From(request, walked.Batch.Bench.Zone, keep)));
    }

    private Instant From(PlanFiles request, DateTimeZone zone, WrittenPlan? keep) =>
        request.From is { } said ? zone.AtLeniently(said).ToInstant()
        : request.Done is { } done ? zone.AtLeniently(done).ToInstant()
        : Instant.Max(RoundedUp(clock.GetCurrentInstant()), keep?.Done?.Until ?? Instant.MinValue);

    /// <summary>What comes of planning checked files.</summary>
    /// <param name="done">What checking gave.</param>
    /// <param name="request">How to plan.</param>
    /// <param name="keep">The plan to stay close to, or null.</param>
    /// <param name="cancel">Ends the search with the best so far.</param>
    public PlanResult Plan(Checked done, PlanFiles request, WrittenPlan? keep, CancellationToken cancel)
    {
        if (done.Sound is not { } walked)
            return new PlanResult.Unsound(done);
        // the planner says it better, at the pace and for the hours asked for
        done = done with { Findings = done.Findings.Without(done.Unplannable.Contains), Unplannable = [] };
        var zone = walked.Batch.Bench.Zone;
        var now = clock.GetCurrentInstant();
        var from = From(request, zone, keep);
        var until = request.Done is { } by ? zone.AtLeniently(by).ToInstant() : (Instant?)null;
        var asked = new PlanRequest(from, request.Effort, request.Pace, new Published(mediator, zone), request.Seed, request.WithWaysOut, keep, until);
        return Stages.Plan(walked, plugins.Trade, asked, cancel) switch
        {
            PlanOutcome.Planned planned => new PlanResult.Planned(WithoutRepeats(done, planned.Plan), planned.Plan with { DaysPast = Math.Max(0, (int)(now - from).TotalDays) }, planned.Reasons),
            PlanOutcome.NoPlan none => new PlanResult.Impossible(done, none),
            var other => throw new InvalidOperationException($"Unknown outcome {other}."),
        };
    }

    // What rules of plans made of the decided starts alone they say better of the plan.
    private static Checked WithoutRepeats(Checked done, Plan plan)
    {
        return done with
        {
            Findings = done.Findings.Without(finding => finding.Rule is { } rule && done.RulesOfPlans.Contains(rule)
                && plan.Findings.Any(other => other.Rule == rule && other.Place == finding.Place)),
        };
    }

    private static Instant RoundedUp(Instant now)
    {
        var step = Duration.FromMinutes(StartsOnMinutes).ToInt64Nanoseconds();
        var over = (now - NodaConstants.UnixEpoch).ToInt64Nanoseconds() % step;
        return over == 0 ? now : now.PlusNanoseconds(step - over);
    }

    /// <summary>Tells the listeners on the calling thread, in order.</summary>
    private sealed class Published(IMediator mediator, DateTimeZone zone) : IProgress<PlanProgress>
    {
        public void Report(PlanProgress value) => mediator.Publish(new PlanProgressed(value, zone)).GetAwaiter().GetResult();
    }
}
