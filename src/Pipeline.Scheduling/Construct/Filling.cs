namespace Pipeline.Scheduling;

/// <summary>How one filling of the sittings decides.</summary>
/// <param name="Keys">Per activity, on the clock of those at hand: smaller comes first.</param>
/// <param name="ChangeWorth">By how many ticks of its key a run may come later for a tick of clean-out saved.</param>
/// <param name="FullFrom">A gap up to so many ticks is filled by choosing the runs that leave the shortest rest.</param>
internal sealed record Filling(double[] Keys, double ChangeWorth, long FullFrom)
{
    /// <summary>How each sitting is chosen among several ways to fill it; null to take the first.</summary>
    public Choice? Choice { get; init; }
}

/// <summary>Each sitting is filled several times with the keys shaken, and filled as was best.</summary>
/// <param name="Tries">How often each is filled, at least 1; the first time the keys are as they are.</param>
/// <param name="ToolWorth">What a tick of work with a tool is worth more than another: it costs changes whenever it is done.</param>
/// <param name="UrgencyWorth">By what share the least urgent work is worth less than the most urgent.</param>
/// <param name="Shake">By how many ticks a key is shaken at most.</param>
/// <param name="Seeds">Start the shaking, one for each sitting; taken in turn if there are more sittings.</param>
internal sealed record Choice(int Tries, double ToolWorth, double UrgencyWorth, double Shake, int[] Seeds);
