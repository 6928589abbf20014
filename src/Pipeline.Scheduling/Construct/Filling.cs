namespace Pipeline.Scheduling;

/// <summary>How one filling of the sittings decides what to do next.</summary>
/// <param name="Keys">Per activity, on the clock of those at hand: smaller is more urgent.</param>
/// <param name="ToolWorth">What a tick of work with a tool is worth more than another: it costs changes whenever it is done.</param>
/// <param name="ChangePrice">What a tick of getting a tool ready costs beside the time it takes: there may be time enough in a sitting.</param>
/// <param name="UrgencyWorth">By what share the least urgent work is worth less than the most urgent.</param>
/// <param name="Patience">So many sittings what a greatest wait ties together waits for its turn.</param>
/// <param name="Joins">Whether it goes in before its turn if its tool is in use anyway.</param>
internal sealed record Filling(double[] Keys, double ToolWorth, double ChangePrice, double UrgencyWorth, int Patience, bool Joins);
