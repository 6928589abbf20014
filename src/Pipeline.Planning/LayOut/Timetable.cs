using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Scheduling;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>A schedule with its way back to models, steps, units and instants.</summary>
internal sealed class Timetable
{
    private readonly long[][] starts;
    private readonly int[][] runOf;
    private readonly Dictionary<int, Paint> cleanedOf = [];
    private readonly Dictionary<int, long> loadedUntil = [];

    public Timetable(Walked walked, Posed posed, Outcome.Planned planned, Pace pace, double slack, bool isKept)
    {
        First = Math.Min(posed.SittingsOver, Math.Max(0, posed.Sittings.Length - 1));
        (Walked, Posed, Planned, Pace, Slack, IsKept) = (walked, posed, planned, pace, slack, isKept);
        starts = [.. posed.Problem.Activities.Select(activity => new long[activity.Units])];
        runOf = [.. posed.Problem.Activities.Select(activity => new int[activity.Units])];
        FollowTools();
        for (var r = 0; r < Runs.Count; r++)
        {
            var run = Runs[r];
            var activity = posed.Problem.Activities[run.Activity];
            for (var k = 0; k < run.Units; k++)
            {
                starts[run.Activity][run.FirstUnit + k] = activity.StartIn(run, run.FirstUnit + k);
                runOf[run.Activity][run.FirstUnit + k] = r;
            }
        }
    }

    public Walked Walked { get; }

    public Posed Posed { get; }

    public Outcome.Planned Planned { get; }

    /// <summary>How close to the low figures the plan is laid.</summary>
    public Pace Pace { get; }

    /// <summary>The share of each sitting that was kept free.</summary>
    public double Slack { get; }

    /// <summary>Whether the plan stays close to an earlier one, and so may leave room for the sake of that.</summary>
    public bool IsKept { get; }

    /// <summary>True if every model is ready by the time it is due.</summary>
    public bool IsInTime => Posed.Problem.Dues.All(due => LateMinutes(due) == 0);

    public Batch Batch => Walked.Batch;

    public DateTimeZone Zone => Walked.Batch.Bench.Zone;

    public Clock Clock => Posed.Clock;

    public IReadOnlyList<Run> Runs => Planned.Schedule.Runs;

    /// <summary>The start of a unit's own work, in ticks.</summary>
    public long Start(int activity, int unit) => starts[activity][unit];

    /// <summary>The finish of a unit, with what runs unattended, in ticks.</summary>
    public long Finish(int activity, int unit) =>
        starts[activity][unit] + Posed.Problem.Activities[activity].PerUnit + Posed.Problem.Activities[activity].Unattended;

    public long At(int activity, int unit, Edge edge) => edge == Edge.Start ? Start(activity, unit) : Finish(activity, unit);

    /// <summary>Whether a run has been done.</summary>
    public bool IsPast(int run) => Planned.Reasons[run] is Reason.Fact;

    /// <summary>Whether a unit has been through an activity.</summary>
    public bool IsDone(int activity, int unit) => IsPast(runOf[activity][unit]);

    /// <summary>Whether all units have been through all passes of a step.</summary>
    public bool IsDone(int route, Step step) => IsDone(Posed.Routes[route].Last(step.Index), LastUnit(Posed.Routes[route].Last(step.Index)));

    /// <summary>The index of the run in which a unit goes through an activity.</summary>
    public int RunOf(int activity, int unit) => runOf[activity][unit];

    /// <summary>What the tool of a run is cleaned of before it; null if it was clean, or holds the same.</summary>
    public Paint? CleanedOf(int run) => cleanedOf.GetValueOrDefault(run);

    /// <summary>Until when the tool of a run then stands loaded, if that is longer than its paint stays open; null otherwise.</summary>
    public long? LoadedUntil(int run) => loadedUntil.TryGetValue(run, out var tick) ? tick : null;

    /// <summary>The index of the first sitting that is not over when the plan begins.</summary>
    public int First { get; }

    /// <summary>When a sitting opens: one that is under way, when the plan begins.</summary>
    public Instant Opens(int sitting) => Instant.Max(Posed.Sittings[sitting].Start, Clock.Origin);

    /// <summary>The index of the sitting a tick lies in.</summary>
    public int SittingAt(long tick)
    {
        var instant = Clock.InstantAt(tick);
        var (low, high) = (0, Posed.Sittings.Length - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            (low, high) = Posed.Sittings[middle].Start <= instant ? (middle, high) : (low, middle - 1);
        }

        return low;
    }

    public int LastUnit(int activity) => Posed.Problem.Activities[activity].Units - 1;

    /// <summary>When hands or drying are done with the last unit.</summary>
    public long Finish(int activity) => Finish(activity, LastUnit(activity));

    /// <summary>When a model is ready, by its own activity at the end: hands are done and its last layers can be handled.</summary>
    public long ReadyAt(int ready) => Math.Max(LastHands(ready), Start(ready, 0));

    /// <summary>When the hands are done with a model, by its own activity at the end; 0 if there is nothing for them to do.</summary>
    public long LastHands(int ready)
    {
        var route = Posed.Routes[Posed.Activities[ready].Route];
        return Enumerable.Range(0, Runs.Count).Where(r => (Runs[r].Worker >= 0 || IsPast(r)) && route.Has(Runs[r].Activity)).Select(r => Runs[r].End).DefaultIfEmpty(0).Max();
    }

    /// <summary>By how many minutes a due time is missed, rounded up to what a clock shows; 0 if it is kept.</summary>
    public int LateMinutes(Scheduling.Due due) =>
        Math.Max(0, (int)Math.Ceiling((ShownUntil(ReadyAt(due.Activity)).ToInstant() - Clock.InstantAt(due.By)).TotalMinutes));

    public WalkedRoute RouteOf(int activity) => Walked.Routes[Posed.Activities[activity].Route];

    public Step? StepOf(int activity) => Posed.Activities[activity].Step;

    /// <summary>A moment as a clock shows it that knows whole minutes.</summary>
    public ZonedDateTime Shown(long tick) => Clock.MinuteAt(tick).InZone(Zone);

    /// <summary>The first whole minute that is not before a tick: for times up to which something must be waited for.</summary>
    public ZonedDateTime ShownUntil(long tick) => Clock.MinuteAt(tick + 1).InZone(Zone);

    /// <summary>A moment in words.</summary>
    public string Said(long tick) => Phrases.Moment(Clock.MinuteAt(tick), Zone);

    /// <summary>A moment in words, beside another: without its date on the same day.</summary>
    public string Said(long tick, long near) => Phrases.Moment(Clock.MinuteAt(tick), Clock.MinuteAt(near), Zone);

    /// <summary>A moment up to which something must be waited for, in words.</summary>
    public string SaidUntil(long tick) => Phrases.Moment(ShownUntil(tick).ToInstant(), Zone);

    /// <summary>A moment up to which something must be waited for, in words, beside another.</summary>
    public string SaidUntil(long tick, long near) => Phrases.Moment(ShownUntil(tick).ToInstant(), Clock.MinuteAt(near), Zone);

    /// <summary>Everything the schedule says about when units go through steps.</summary>
    public KnownTimes Known()
    {
        var times = new List<KnownTime>();
        for (var r = 0; r < Posed.Routes.Length; r++)
        {
            for (var s = 0; s < Posed.Routes[r].FirstPasses.Length; s++)
            {
                var (first, last) = (Posed.Routes[r].First(s), Posed.Routes[r].Last(s));
                for (var k = 0; k < starts[first].Length; k++)
                    times.Add(new KnownTime(r, s, k, Clock.InstantAt(Start(first, k)), Clock.InstantAt(Finish(last, k)), IsDone(last, k)));
            }
        }

        return new KnownTimes(times);
    }

    // A tool is clean at the start of every sitting, and after it has been closed down.
    private void FollowTools()
    {
        var closed = Planned.Schedule.CloseDowns.ToLookup(close => (close.Tool, close.ToolNumber), close => close.Start);
        var held = new Dictionary<(int Tool, int Number), int>();
        foreach (var r in Enumerable.Range(0, Runs.Count).OrderBy(r => Runs[r].Start))
        {
            var run = Runs[r];
            if (Posed.Problem.Activities[run.Activity].Tool is not { } use)
                continue;
            var key = (use.Tool, run.ToolNumber);
            if (held.TryGetValue(key, out var last) && !IsPast(r) && IsSameSitting(last, run))
                Follow(last, r, closed[key].Where(at => at >= Runs[last].Start && at < run.Start).Select(at => (long?)at).Min());
            held[key] = r;
        }
    }

    // What was done before the sittings looked at is in none; where a tool was put away in a sitting under way, that is parted.
    private bool IsSameSitting(int use, Run next) => IsPast(use)
        ? Runs[use].Worker >= 0 && Posed.Problem.Workers[Runs[use].Worker].Open.Open.Any(open => open.Start <= Runs[use].Start && Runs[use].Start < open.End && next.Start < open.End)
        : SittingAt(Runs[use].Start) == SittingAt(next.Start);

    // From one use of a tool to the next in the same sitting, or to its being closed down between.
    private void Follow(int last, int next, long? closed)
    {
        var (tool, load) = Posed.Problem.Activities[Runs[last].Activity].Tool!;
        if (Posed.Tools.Load(tool, load) is not { } paint)
            return;
        if (closed is null && load != Posed.Problem.Activities[Runs[next].Activity].Tool!.Load)
            cleanedOf[next] = paint;
        var until = closed ?? Runs[next].Start;
        if (paint.Family?.OpenTime is { } open && until - Runs[last].End > Clock.AtLeast(open.Minutes))
            loadedUntil[last] = until;
    }
}
