namespace Pipeline.Scheduling;

/// <summary>What a past run has left in one of the tools alike.</summary>
/// <param name="Number">Which of them.</param>
/// <param name="Load">The load.</param>
/// <param name="LeftAt">When the open interval of whoever used it is over: from then on it is clean.</param>
internal readonly record struct ExactHeld(int Number, int Load, long LeftAt)
{
    /// <summary>Those that are not clean before anything is to be done.</summary>
    public static ExactHeld[] Of(Net net, int tool, long from) =>
        [.. Enumerable.Range(0, net.Count).Where(a => net.Tool[a] == tool).SelectMany(a => net[a].Past)
            .GroupBy(r => r.ToolNumber, (number, runs) => runs.OrderBy(r => r.Start).ThenBy(r => r.End).Last())
            .Select(r => new ExactHeld(r.ToolNumber, net.Load[r.Activity], Left(net, r)))
            .Where(h => h.LeftAt > from).OrderBy(h => h.Number)];

    private static long Left(Net net, Run run) => run.Worker < 0
        ? run.End
        : Math.Max(run.End, net.Open[run.Worker].Where(o => o.Start <= run.Start && run.Start < o.End).Select(o => o.End).DefaultIfEmpty(run.End).Max());
}
