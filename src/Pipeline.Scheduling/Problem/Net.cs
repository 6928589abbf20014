namespace Pipeline.Scheduling;

/// <summary>
/// A wait, or one side of it, between the starts of units' own work: start(To) ≥ start(From) + Lag.
/// A greatest wait is an arc backwards with a negative lag.
/// </summary>
/// <param name="Whole">From the last unit to the first; otherwise from each unit to the same unit.</param>
internal readonly record struct Arc(int From, int To, long Lag, bool Whole, int Wait, bool IsGreatest);

/// <summary>The problem laid out for the solver: flat arrays, and every wait as arcs between starts.</summary>
internal sealed class Net
{
    public Net(Problem problem)
    {
        Problem = problem;
        Count = problem.Activities.Length;
        Units = [.. problem.Activities.Select(a => a.Units)];
        Done = [.. problem.Activities.Select(a => a.Past.Sum(r => r.Units))];
        Step = [.. problem.Activities.Select(a => a.Together ? 0 : a.PerUnit)];
        Duration = [.. problem.Activities.Select(a => a.PerUnit + a.Unattended)];
        Tool = [.. problem.Activities.Select(a => a.Tool?.Tool ?? -1)];
        Load = [.. problem.Activities.Select(a => a.Tool?.Load ?? -1)];
        Attended = [.. problem.Activities.Select(a => a.IsAttended)];
        PinnedStart = [.. problem.Activities.Select(a => a.Past.IsEmpty ? a.PinnedStart : null)];
        Whole = [.. problem.Activities.Select(a => a.Together || !a.MayBeParted || (a.Past.IsEmpty && a.PinnedStart is not null))];
        Offset = new int[Count + 1];
        for (var a = 0; a < Count; a++)
            Offset[a + 1] = Offset[a] + Units[a];
        var everybody = Enumerable.Range(0, problem.Workers.Length).ToArray();
        Workers = [.. problem.Activities.Select(a => !a.IsAttended ? [] : a.Workers.IsEmpty ? everybody : a.Workers.Distinct().Order().ToArray())];
        Open = [.. problem.Workers.Select(w => w.Open.Open.ToArray())];
        MostPerDay = [.. problem.Workers.Select(w => w.MostPerDay ?? long.MaxValue)];
        // without a cap it is all the same what belongs together
        Day = [.. problem.Workers.Select((w, i) => w.MostPerDay is null ? Enumerable.Range(0, Open[i].Length).ToArray() : w.Open.Day.ToArray())];
        MostAtOnce = [.. Open.Select((open, w) => Math.Min(open.Select(o => o.Length).DefaultIfEmpty(0).Max(), MostPerDay[w]))];
        Stays = PlaceStays.Of(problem, Duration);
        HasStays = Stays.Any(stays => stays.Length > 0);
        var arcs = Arcs(problem).ToList();
        In = Group(arcs, arc => arc.To);
        Out = Group(arcs, arc => arc.From);
    }

    public Problem Problem { get; }

    public int Count { get; }

    public int[] Units { get; }

    /// <summary>Units already done.</summary>
    public int[] Done { get; }

    /// <summary>Ticks from one unit's start to the next one's.</summary>
    public long[] Step { get; }

    /// <summary>Ticks from a unit's own start to its finish.</summary>
    public long[] Duration { get; }

    public int[] Tool { get; }

    public int[] Load { get; }

    public bool[] Attended { get; }

    public long?[] PinnedStart { get; }

    /// <summary>All units still to do go in one run.</summary>
    public bool[] Whole { get; }

    /// <summary>Where an activity's units begin in a flat array of all units.</summary>
    public int[] Offset { get; }

    public int[][] Workers { get; }

    public Interval[][] Open { get; }

    /// <summary>Per worker, the most attended ticks in a day.</summary>
    public long[] MostPerDay { get; }

    /// <summary>Per worker and open interval, the day that is capped; each interval has its own where there is no cap.</summary>
    public int[][] Day { get; }

    /// <summary>Per worker, the most attended ticks in one go: the longest open interval, or the cap.</summary>
    public long[] MostAtOnce { get; }

    /// <summary>Per activity, the stays of its units in places that can fill up; a place with room for all that ever come is left out.</summary>
    public Stay[][] Stays { get; }

    /// <summary>Whether any place can fill up.</summary>
    public bool HasStays { get; }

    public Arc[][] In { get; }

    public Arc[][] Out { get; }

    public Activity this[int activity] => Problem.Activities[activity];

    /// <summary>Attended ticks on the units of a run.</summary>
    public long Work(int activity, int units) => this[activity].Together ? this[activity].PerUnit : units * this[activity].PerUnit;

    /// <summary>Own start of each unit that is already done; others are left as they are.</summary>
    public void FillPast(long[] starts)
    {
        for (var a = 0; a < Count; a++)
        {
            foreach (var run in this[a].Past)
            {
                for (var k = 0; k < run.Units; k++)
                    starts[Offset[a] + run.FirstUnit + k] = run.WorkStart + (k * Step[a]);
            }
        }
    }

    /// <summary>Attended ticks to get a tool from a load (−1: clean) to another.</summary>
    public long CleanOut(int tool, int from, int to)
    {
        var t = Problem.Tools[tool];
        return from < 0 ? t.Fill[to] : t.CleanOut[from][to];
    }

    /// <summary>Attended ticks that getting an activity's tool ready can take at the most.</summary>
    public long MostCleanOut(int activity)
    {
        if (Tool[activity] < 0)
            return 0;
        var tool = Problem.Tools[Tool[activity]];
        return Math.Max(tool.Fill[Load[activity]], tool.CleanOut.Max(from => from[Load[activity]]));
    }

    /// <summary>The latest own start of the first unit that a pinned start allows, its tool cleaned out first; null if it is not pinned.</summary>
    public long? LatestPinned(int activity) => PinnedStart[activity] + MostCleanOut(activity) + this[activity].SetUp;

    private IEnumerable<Arc> Arcs(Problem problem)
    {
        for (var w = 0; w < problem.Waits.Length; w++)
        {
            var wait = problem.Waits[w];
            var whole = wait.Scope == Scope.WholeLot;
            var shift = (wait.FromEdge == Edge.Finish ? Duration[wait.From] : 0) - (wait.ToEdge == Edge.Finish ? Duration[wait.To] : 0);
            if (wait.Least is { } least)
                yield return new Arc(wait.From, wait.To, least + shift, whole, w, IsGreatest: false);
            if (wait.Greatest is { } greatest)
                yield return new Arc(wait.To, wait.From, -(greatest + shift), whole, w, IsGreatest: true);
        }
    }

    private Arc[][] Group(List<Arc> arcs, Func<Arc, int> by)
    {
        var groups = new List<Arc>[Count];
        for (var a = 0; a < Count; a++)
            groups[a] = [];
        foreach (var arc in arcs)
            groups[by(arc)].Add(arc);
        return [.. groups.Select(g => g.ToArray())];
    }
}
