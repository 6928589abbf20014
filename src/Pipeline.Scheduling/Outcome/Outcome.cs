using System.Collections.Immutable;

namespace Pipeline.Scheduling;

/// <summary>What became of a problem: a plan, or the reasons why there is none.</summary>
public abstract record Outcome
{
    private protected abstract void Close();

    /// <summary>A schedule that keeps every constraint; the auditor has passed it.</summary>
    /// <param name="Schedule">The runs, the past ones included, and the close-downs.</param>
    /// <param name="Score">How good it is.</param>
    /// <param name="Bound">How good any schedule could possibly be.</param>
    /// <param name="Reasons">For each run of the schedule, by index, what keeps it from starting earlier.</param>
    /// <param name="CriticalRuns">Indexes of the runs from the first cause to the last finish, each held back by the one before it.</param>
    /// <param name="Finishes">Per activity: when it finishes, and the slack it has.</param>
    /// <param name="StoppedEarly">True if it was cancelled before its budget of work was used.</param>
    /// <param name="Work">How many run placements were tried; the measure of effort, the same however busy the machine is.</param>
    public sealed record Planned(
        Schedule Schedule,
        Score Score,
        Bound Bound,
        ImmutableArray<Reason> Reasons,
        ImmutableArray<int> CriticalRuns,
        ImmutableArray<ActivityFinish> Finishes,
        bool StoppedEarly,
        long Work) : Outcome
    {
        /// <summary>Schedules on the way that the auditor refused, and that were left out: zero unless the search has a fault.</summary>
        public int Refused { get; init; }

        private protected override void Close() { }
    }

    /// <summary>No schedule keeps every constraint, or none was found.</summary>
    /// <param name="Obstacles">What stands in the way, at least one.</param>
    /// <param name="Closest">When only hard due times stand in the way: the schedule that misses them least; otherwise null.</param>
    public sealed record Impossible(ImmutableArray<Obstacle> Obstacles, Planned? Closest = null) : Outcome
    {
        private protected override void Close() { }
    }
}

/// <summary>The finish of one activity.</summary>
/// <param name="Activity">Index of the activity.</param>
/// <param name="Finish">When its last unit is finished, with what runs unattended.</param>
/// <param name="Slack">By how many ticks the activity could be finished later, all else in the schedule staying, without
/// breaking a wait, a due time or the finish of the whole. Zero if none. What keeps the hands busy is not looked at.</param>
public readonly record struct ActivityFinish(int Activity, long Finish, long Slack);

/// <summary>How hard to try. Budgets are counted in run placements, never in seconds, so the same problem gives the same
/// schedule however busy the machine is and however many cores it has. Small problems are given to the exact solver too, with a budget in its own counted work.</summary>
public enum Effort
{
    /// <summary>Some dozens of dispatches and a short search: 2,500 placements per unit, at least 100,000 and at most 2 million.</summary>
    Quick,

    /// <summary>The everyday choice, a matter of seconds: 400,000 placements per unit, at most 120 million,
    /// which two idle cores do in about ten seconds. Where places fill up 40,000 per unit, at most 60 million, since a change there moves more.
    /// A project without hands is given 2 × 1,400 million steps of its list schemes and two units of the exact solver; one of up to 40 tasks six and a half units, and fewer steps.</summary>
    Usual,

    /// <summary>For when it matters: 600,000 placements per unit, at most 360 million.</summary>
    Thorough,
}

/// <summary>How a search is getting on.</summary>
/// <param name="Best">The best schedule so far.</param>
/// <param name="Bound">No schedule finishes before this tick.</param>
/// <param name="Work">Run placements tried so far.</param>
/// <param name="Budget">Run placements that will be tried in all.</param>
public sealed record SolveProgress(Score Best, long Bound, long Work, long Budget);

/// <summary>An earlier schedule that people have already looked at; runs that stay where they were are worth something.</summary>
/// <param name="Earlier">The earlier schedule. Activities are compared by index, units by theirs; what has no run in it is free to be anywhere.</param>
/// <param name="TicksPerMovedRun">How many ticks of a later finish one moved run is worth.</param>
/// <param name="Within">A run of the same units that starts less than so many ticks sooner or later counts for less, the less it slides the more so: half as far, a sixteenth.</param>
public sealed record Keep(Schedule Earlier, double TicksPerMovedRun, long Within = 0)
{
    /// <summary>Per activity that the earlier schedule has, the number of units up to the last it has; those from there on are new.</summary>
    public Dictionary<int, int> KnownUnits() =>
        Earlier.Runs.GroupBy(run => run.Activity).ToDictionary(mine => mine.Key, mine => mine.Max(run => run.FirstUnit + run.Units));
}

/// <summary>The runs of an earlier schedule, to be found again. Units that it does not have are new: whatever happens to them, nothing has moved.</summary>
internal sealed class KeptRuns
{
    private readonly Dictionary<(int Activity, int FirstUnit), (int Units, int Worker, long Start)> kept = [];
    private readonly Dictionary<int, int> known;
    private readonly long within;

    public KeptRuns(Keep keep)
    {
        within = Math.Max(1, keep.Within);
        known = keep.KnownUnits();
        foreach (var run in keep.Earlier.Runs)
            kept[(run.Activity, run.FirstUnit)] = (run.Units, run.Worker, run.Start);
    }

    /// <summary>
    /// How much a run is elsewhere than it was: 1 if it is far away, parted otherwise or in other hands, 0 if it is where it was.
    /// New units may have joined it.
    /// </summary>
    public double Moved(int activity, int firstUnit, int units, int worker, long start)
    {
        var unitsKnown = Math.Min(units, known.GetValueOrDefault(activity) - firstUnit);
        if (unitsKnown <= 0)
            return 0;
        if (!kept.TryGetValue((activity, firstUnit), out var was) || was.Units != unitsKnown || was.Worker != worker)
            return 1;
        var share = Math.Abs(was.Start - start) / (double)within;
        return Math.Min(1, share * share * share * share);
    }
}
