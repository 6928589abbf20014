using System.Collections.Immutable;

namespace Pipeline.Scheduling;

/// <summary>
/// A stretch in which one worker takes some neighbouring units of a lot through an activity:
/// clean-out, then set-up, then the units one after another (or together), then putting away, without a break.
/// </summary>
/// <param name="Activity">Index of the activity.</param>
/// <param name="FirstUnit">Index of the first unit.</param>
/// <param name="Units">How many units.</param>
/// <param name="Worker">Index of the worker, or −1 if nothing is attended.</param>
/// <param name="ToolNumber">Which of the tools alike, or −1.</param>
/// <param name="Start">When the run starts, with its clean-out.</param>
/// <param name="CleanOut">Ticks to get the tool from what it held to the load it needs.</param>
/// <param name="SetUp">Ticks of set-up.</param>
/// <param name="Work">Ticks of attended work on all its units.</param>
/// <param name="PutAway">Ticks of putting away.</param>
public sealed record Run(
    int Activity,
    int FirstUnit,
    int Units,
    int Worker,
    int ToolNumber,
    long Start,
    long CleanOut,
    long SetUp,
    long Work,
    long PutAway)
{
    /// <summary>When the first unit's own work starts.</summary>
    public long WorkStart => Start + CleanOut + SetUp;

    /// <summary>When the last unit's attended work is over.</summary>
    public long WorkEnd => WorkStart + Work;

    /// <summary>When the hands are free again.</summary>
    public long End => WorkEnd + PutAway;
}

/// <summary>Cleaning a tool at the end of the open interval in which it was last used.</summary>
public sealed record CloseDown(int Tool, int ToolNumber, int Load, int Worker, long Start, long Ticks);

/// <summary>Every run, in order of start.</summary>
public sealed record Schedule(ImmutableArray<Run> Runs, ImmutableArray<CloseDown> CloseDowns);
