namespace Pipeline.Scheduling;

/// <summary>How good a schedule is. Each figure is better when smaller.</summary>
/// <param name="HardLateness">Ticks by which hard due times are missed, summed; zero in every planned outcome.</param>
/// <param name="Lateness">Ticks late times weight, summed over the due times.</param>
/// <param name="Finish">When the last activity finishes.</param>
/// <param name="Changes">Attended ticks of clean-outs, set-ups, putting away and close-downs.</param>
/// <param name="Holds">Ticks held times hold weight, over all waits that have one and all their units.</param>
/// <param name="Unevenness">Sum over the open intervals of attended ticks squared, divided by the sum unsquared.</param>
/// <param name="Moved">How many runs are not where the schedule to keep had them; near ones in proportion.</param>
public readonly record struct Score(
    long HardLateness,
    double Lateness,
    long Finish,
    long Changes,
    double Holds,
    double Unevenness,
    double Moved);

/// <summary>What no schedule can better.</summary>
/// <param name="Finish">No schedule finishes before this tick.</param>
/// <param name="Lateness">No schedule has less weighted lateness.</param>
/// <param name="GapOpenTicks">Open ticks between <paramref name="Finish"/> and the finish of the schedule: what could at most be saved.
/// An hour in which anybody is at hand counts once.</param>
/// <param name="GapIntervals">How many open intervals begin in between: so many sittings could be saved at most.</param>
/// <param name="OpenTicks">Open ticks from the first possible start to the finish of the schedule, to set the gap against.</param>
/// <param name="Source">Which bound was the sharpest.</param>
/// <param name="IsBestAsParted">Whether it is proved that nothing finishes sooner with lots parted at most where the schedule parts them.</param>
public readonly record struct Bound(
    long Finish,
    double Lateness,
    long GapOpenTicks,
    int GapIntervals,
    long OpenTicks,
    BoundSource Source,
    bool IsBestAsParted)
{
    /// <summary>True if no open tick could be saved.</summary>
    public bool IsTight => GapOpenTicks == 0;

    /// <summary>The gap as a share of the open ticks used, between 0 and 1.</summary>
    public double GapShare => OpenTicks == 0 ? 0 : (double)GapOpenTicks / OpenTicks;
}

/// <summary>Where a bound comes from.</summary>
public enum BoundSource
{
    /// <summary>The longest chain of waits, fitted into the open hours.</summary>
    LongestPath,

    /// <summary>All the hands' work packed into the open hours, each piece between its earliest and latest time.</summary>
    WorkContent,

    /// <summary>The exact solver.</summary>
    Proof,
}
