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

    /// <summary>Indexes of the open intervals in which it could lie, in order of time.</summary>
    public int[] Sittings { get; set; } = [];

    /// <summary>For each of them, whether it lies there.</summary>
    public BoolVar[] In { get; set; } = [];

    /// <summary>Ticks of clean-out before it; zero without a tool.</summary>
    public LinearExpr CleanOut { get; set; } = LinearExpr.Constant(0);

    /// <summary>When the hands begin, with clean-out and set-up if a run begins here.</summary>
    public LinearExpr HandsFrom { get; set; } = null!;

    /// <summary>When the hands are free, with putting away if a run ends here.</summary>
    public LinearExpr HandsUntil { get; set; } = null!;

    /// <summary>Index of the open interval in which it lies.</summary>
    public LinearExpr Sitting => LinearExpr.WeightedSum(In, Sittings);

    /// <summary>Whether it lies in an open interval; null if it cannot.</summary>
    public BoolVar? Within(int sitting) => Array.BinarySearch(Sittings, sitting) is var i and >= 0 ? In[i] : null;
}
