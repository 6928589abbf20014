using MediatR;
using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Planning;
using Pipeline.Workflows;

namespace Pipeline.Engine;

/// <summary>Asks for a plan for one or more files, taken together as one batch.</summary>
/// <param name="Inputs">At least one.</param>
/// <param name="From">
/// Nothing is planned before this, in the bench's zone; null for now, rounded up to the next five minutes. A time the clocks skip
/// counts as much later as they skip; of a time that comes twice the first counts.
/// </param>
/// <param name="Pace">Overrides the file's pace; null to keep it.</param>
/// <param name="Effort">How hard to look for a better plan.</param>
/// <param name="Seed">The same seed gives the same plan.</param>
public sealed record PlanFiles(
    Sequence<WorkflowInput> Inputs,
    LocalDateTime? From = null,
    Pace? Pace = null,
    SearchEffort Effort = SearchEffort.Usual,
    ulong Seed = 1) : IRequest<Answer<PlanResult>>;

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
    public sealed record Planned(Checked Checked, Plan Plan) : PlanResult(Checked)
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

internal sealed class PlanFilesHandler(CheckFilesHandler check, PluginShelf plugins, IClock clock, IMediator mediator)
    : IRequestHandler<PlanFiles, Answer<PlanResult>>
{
    private const int StartsOnMinutes = 5;

    public Task<Answer<PlanResult>> Handle(PlanFiles request, CancellationToken cancellationToken) =>
        Task.FromResult<Answer<PlanResult>>(check.Check(new CheckFiles(request.Inputs)) switch
        {
            Answer<Checked>.Given given => new Answer<PlanResult>.Given(Plan(given.Value, request, cancellationToken)),
            Answer<Checked>.Refused refused => new Answer<PlanResult>.Refused(refused.Why),
            var other => throw new InvalidOperationException($"Unknown answer {other}."),
        });

    private PlanResult Plan(Checked done, PlanFiles request, CancellationToken cancel)
    {
        if (done.Sound is not { } walked)
            return new PlanResult.Unsound(done);
        var zone = walked.Batch.Bench.Zone;
        var from = request.From is { } said ? zone.AtLeniently(said).ToInstant() : RoundedUp(clock.GetCurrentInstant());
        var asked = new PlanRequest(from, request.Effort, request.Pace, new Published(mediator, zone), request.Seed);
        return Stages.Plan(walked, plugins.Trade, asked, cancel) switch
        {
            PlanOutcome.Planned planned => new PlanResult.Planned(WithoutRepeats(done, planned.Plan), planned.Plan),
            PlanOutcome.NoPlan none => new PlanResult.Impossible(done, none),
            var other => throw new InvalidOperationException($"Unknown outcome {other}."),
        };
    }

    // What rules of plans made of the decided starts alone they say better of the plan.
    private Checked WithoutRepeats(Checked done, Plan plan)
    {
        var ofPlans = plugins.Trade.Rules.Select(rule => rule.Item).OfType<PlanRule>().Select(rule => rule.Name).ToHashSet(StringComparer.Ordinal);
        return done with
        {
            Findings = done.Findings.Without(finding => finding.Rule is { } rule && ofPlans.Contains(rule)
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
