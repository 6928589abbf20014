using Google.OrTools.Sat;

namespace Pipeline.Scheduling;

/// <summary>Neighbouring units of a lot that the exact model never parts, and its variables for them.</summary>
internal sealed class Piece(int activity, int first, int units)
{
    public int Activity { get; } = activity;

    public int First { get; } = first;

    public int Units { get; } = units;

    /// <summary>Own start of the first unit.</summary>
    public IntVar Start { get; set; } = null!;

    /// <summary>Whether a run begins with it; null if one always does, or if that costs nothing and is not asked.</summary>
    public BoolVar? Begins { get; set; }

    /// <summary>Whether a run ends with it; null if one always does, or if that costs nothing and is not asked.</summary>
    public BoolVar? Ends { get; set; }

    /// <summary>Where it could lie, in order of rank.</summary>
    public Opening[] Openings { get; set; } = [];

    /// <summary>For each of them, whether it lies there.</summary>
    public BoolVar[] In { get; set; } = [];

    /// <summary>Who could do it, and whether that worker does; null if nobody else could.</summary>
    public (int Worker, BoolVar? Does)[] Hands { get; set; } = [];

    /// <summary>Ticks of clean-out before it; zero without a tool.</summary>
    public LinearExpr CleanOut { get; set; } = LinearExpr.Constant(0);

    /// <summary>When the hands begin, with clean-out and set-up if a run begins here.</summary>
    public LinearExpr HandsFrom { get; set; } = null!;

    /// <summary>When the hands are free, with putting away if a run ends here.</summary>
    public LinearExpr HandsUntil { get; set; } = null!;

    /// <summary>When the open interval in which it lies begins.</summary>
    public LinearExpr Opens => LinearExpr.WeightedSum(In, Openings.Select(o => o.Open.Start));

    /// <summary>When the open interval in which it lies ends.</summary>
    public LinearExpr Closes => LinearExpr.WeightedSum(In, Openings.Select(o => o.Open.End));

    /// <summary>The rank of the open interval in which it lies.</summary>
    public LinearExpr Rank => LinearExpr.WeightedSum(In, Openings.Select(o => o.Rank));

    /// <summary>Whether it lies in an open interval; null if it cannot.</summary>
    public BoolVar? Within(in Opening opening) => Array.IndexOf(Openings, opening) is var i and >= 0 ? In[i] : null;

    /// <summary>Whether it lies in one of those open intervals that are so.</summary>
    public IEnumerable<BoolVar> Where(Func<Opening, bool> isSo) => In.Where((_, i) => isSo(Openings[i]));

    /// <summary>Whether nobody but one and the same worker could do either.</summary>
    public bool IsInSameHands(Piece other) => Hands is [var mine] && other.Hands is [var others] && mine.Worker == others.Worker;

    public bool CouldBeDoneBy(int worker) => Hands.Any(h => h.Worker == worker);

    /// <summary>The open interval in which the solver has it.</summary>
    public Opening Chosen(CpSolver solver) => Openings[Array.FindIndex(In, solver.BooleanValue)];
}
