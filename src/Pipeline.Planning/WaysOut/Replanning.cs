using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>Plans changed batches anew with quick effort, so many times and no more.</summary>
/// <param name="request">What was asked of the plan that is late.</param>
/// <param name="late">The plan that is late.</param>
/// <param name="cancel">Ends it.</param>
internal sealed class Replanning(PlanRequest request, Timetable late, CancellationToken cancel)
{
    // So many unit-steps are placed anew for each kind of change: a batch of tens of models a dozen times, a huge one once or twice.
    private const int UnitSteps = 3_600;
    private const int Most = 20;

    private readonly PlanRequest quick = request with { Effort = SearchEffort.Quick, Progress = null };
    private int left;
    private int made;

    /// <summary>The latest that any model is after its due time, in minutes.</summary>
    public static int MostLate(Timetable table) => table.Posed.Problem.Dues.Select(table.LateMinutes).DefaultIfEmpty(0).Max();

    /// <summary>Begins another kind of change: as many plans again, and some more.</summary>
    public void Begin(int more) => left = more + Math.Clamp(UnitSteps / Math.Max(1, late.Posed.Problem.Activities.Sum(activity => activity.Units)), 1, Most);

    /// <summary>
    /// A changed batch planned; null if there is no plan, or no more are to be tried. Full sittings first: what is late even so need not be
    /// tried with room left free.
    /// </summary>
    public Timetable? Anew(Changed changed)
    {
        if (left <= 0 || cancel.IsCancellationRequested)
            return null;
        left--;
        Tell();
        var attempt = new Attempt(changed.Walked, quick, changed.Pace, cancel);
        var slack = changed.Pace == Pace.Comfortable ? changed.Walked.Batch.Bench.Slack.Fraction : 0;
        if (attempt.Once(changed.Pacing, slack: 0) is not Trial.Found { Table: var filled })
            return null;
        return filled.IsInTime && slack > 0 && attempt.Once(changed.Pacing, slack) is Trial.Found { Table: { IsInTime: true } roomy } ? roomy : filled;
    }

    /// <summary>
    /// The plan that the changed file gets, room left free and even days as it asks for them: only that is told of. Null if there is none, or
    /// the search has been stopped.
    /// </summary>
    public Timetable? AsAsked(Changed changed)
    {
        if (cancel.IsCancellationRequested)
            return null;
        Tell();
        return new Attempt(changed.Walked, quick, changed.Pace, cancel).AsAsked(changed.Pacing) is Trial.Found { Table: var table } ? table : null;
    }

    private void Tell() =>
        request.Progress?.Report(new PlanProgress(late.Clock.InstantAt(late.Planned.Score.Finish), late.Clock.InstantAt(late.Planned.Bound.Finish), 1, ++made));

    /// <summary>What came of a change.</summary>
    public static WayOut Way(Timetable table, Change change, string words) => new(
        change,
        words,
        Enumerable.Range(0, table.Posed.Activities.Length).Where(a => table.StepOf(a) is null).Select(a => table.ShownUntil(table.ReadyAt(a))).MaxBy(ready => ready.ToInstant()),
        MostLate(table),
        table.Pace == Pace.Comfortable && table.Slack < table.Batch.Bench.Slack.Fraction);
}

/// <summary>A batch as it is after a change, and the pace it is then planned at.</summary>
internal sealed record Changed(Walked Walked, Pacing Pacing, Pace Pace);
