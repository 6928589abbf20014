using Pipeline.Abstractions;
using Pipeline.Scheduling;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>What came of posing and solving once.</summary>
internal abstract record Trial
{
    private protected abstract void Closed();

    /// <summary>A schedule.</summary>
    public sealed record Found(Timetable Table) : Trial
    {
        private protected override void Closed() { }
    }

    /// <summary>None, and why; reckoned when asked, as that may take planning anew.</summary>
    public sealed record None(Lazy<Sequence<Finding>> Said) : Trial
    {
        private protected override void Closed() { }
    }
}

/// <summary>Poses a batch, solves it, and looks further ahead where the sittings end before the work does.</summary>
/// <param name="walked">The batch.</param>
/// <param name="request">From when, how hard to try.</param>
/// <param name="pace">How close to the low figures where nothing else is said.</param>
/// <param name="cancel">Stops the search.</param>
internal sealed class Attempt(Walked walked, PlanRequest request, Pace pace, CancellationToken cancel)
{
    private const int Threads = 2;

    /// <summary>
    /// The plan as the file asks for it: with room left free, decided times kept at the closer pace where they leave no other, and even days where
    /// those come before something else.
    /// </summary>
    public Trial AsAsked(Pacing pacing)
    {
        var trial = WithSlack(pacing);
        if (trial is Trial.None && pace == Pace.Comfortable && Decided is { Count: > 0 } decided)
        {
            // decided times may leave room for the shortest waits only; the plan then says what that risks
            pacing = pacing.WithRoutes(decided);
            trial = WithSlack(pacing);
        }

        return trial is Trial.Found { Table: var found } ? new Trial.Found(new Evenly(this, pacing, walked.Batch.Aims).Of(found)) : trial;
    }

    /// <summary>The routes with a decided time.</summary>
    private HashSet<int> Decided => [.. Enumerable.Range(0, walked.Routes.Count).Where(r => !walked.Routes[r].Route.Pins.IsEmpty)];

    /// <summary>
    /// A part of each sitting stays free unless no due time can be met that way: those come first, and the plan then says how full it is.
    /// </summary>
    private Trial WithSlack(Pacing pacing)
    {
        var slack = pace == Pace.Comfortable ? walked.Batch.Bench.Slack.Fraction : 0;
        var trial = Once(pacing, slack);
        if (slack == 0 || cancel.IsCancellationRequested || (trial is Trial.Found { Table: { IsInTime: true } roomy } && (request.Keep is null || roomy.Planned.Score.Moved == 0 || IsReadySooner(roomy))))
            return trial;
        var filled = Once(pacing, slack: 0);
        // what takes longer than it did is what the room was left for: better that than moving other work about
        if (request.Keep is not null && trial is Trial.Found { Table: var moved } && filled is Trial.Found { Table: var kept } && (kept.IsInTime || !moved.IsInTime))
            return kept.Planned.Score.Moved < moved.Planned.Score.Moved ? filled : trial;
        // where there is no plan either way, the reasons speak of the sittings as they are
        return filled is Trial.Found { Table.IsInTime: true } || trial is Trial.None ? filled : trial;
    }

    // Then what moved did so because it pays, and the room stays free.
    private bool IsReadySooner(Timetable table) =>
        request.Keep?.Finishes.Select(finish => finish.Ready).DefaultIfEmpty().Max() > table.Clock.InstantAt(table.Planned.Score.Finish);

    /// <summary>One schedule.</summary>
    /// <param name="pacing">How close to the low figures each step is.</param>
    /// <param name="slack">The share of each sitting that stays free.</param>
    /// <param name="most">Most ticks of work for one painter in one day, besides what the bench says; null for no other limit.</param>
    public Trial Once(Pacing pacing, double slack, long? most = null)
    {
        var posing = new Posing(walked, request.From, pacing, slack, most, request.DoneWork);
        var horizon = new Horizon(walked, request.From, pace);
        while (true)
        {
            var posed = posing.Until(horizon.Until);
            if (posing.Findings.Count > 0)
                return new Trial.None(new Lazy<Sequence<Finding>>(posing.Findings.ToSequence()));
            var keep = request.Keep is { } earlier ? Keeping.Of(request.DoneWork is { } done ? earlier.Without(done) : earlier, walked, posed) : null;
            // what nobody can do in time any more is still to be done
            Sequence<Obstacle> obstacles = [];
            foreach (var kept in Overdue.Longer(posed))
            {
                var outcome = Solver.Solve(kept.Problem, EffortOf(request.Effort), Seed(request.Seed), ProgressOf(posed.Clock), keep, Threads, cancel);
                if (outcome is Outcome.Planned planned)
                    return new Trial.Found(new Timetable(walked, kept, planned, pace, slack, isKept: keep is not null));
                if (obstacles.IsEmpty)
                    obstacles = ((Outcome.Impossible)outcome).Obstacles.ToSequence();
                if (cancel.IsCancellationRequested || obstacles.Any(o => o is Obstacle.OpenHoursEnd))
                    break;
            }

            if (!cancel.IsCancellationRequested && obstacles.Any(o => o is Obstacle.OpenHoursEnd or Obstacle.NotFound) && horizon.TryExtend(posed.Sittings.Length - posed.SittingsOver))
                continue;
            return new Trial.None(new Lazy<Sequence<Finding>>(() => Hindrances.Of(walked, posed, obstacles, cancel)));
        }
    }

    private static Scheduling.Effort EffortOf(SearchEffort effort) => effort switch
    {
        SearchEffort.Quick => Scheduling.Effort.Quick,
        SearchEffort.Thorough => Scheduling.Effort.Thorough,
        _ => Scheduling.Effort.Usual,
    };

    private static int Seed(ulong seed) => (int)((seed ^ (seed >> 32)) & int.MaxValue);

    private Forward? ProgressOf(Clock clock) => request.Progress is { } progress ? new Forward(progress, clock) : null;

    // Told on the calling thread, in order: no queue in between.
    private sealed class Forward(IProgress<PlanProgress> progress, Clock clock) : IProgress<SolveProgress>
    {
        public void Report(SolveProgress value) => progress.Report(new PlanProgress(
            clock.InstantAt(value.Best.Finish),
            clock.InstantAt(value.Bound),
            value.Budget <= 0 ? 0 : Math.Clamp((double)value.Work / value.Budget, 0, 1)));
    }
}
