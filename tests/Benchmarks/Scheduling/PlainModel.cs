using Pipeline.Scheduling;

namespace Pipeline.Benchmarks.Scheduling;

/// <summary>
/// The baseline: a whole batch as one constraint model, without bounds, hint or first plan, as a textbook has it.
/// </summary>
internal static class PlainModel
{
    // Its tools need a literal for every pair of units.
    private const int MostPairs = 2_000_000;

    /// <summary>The finish it comes to in the time, or null; with the CPU seconds it took.</summary>
    public static (long? Finish, double CpuSeconds) Solve(Problem problem, double cpuSeconds)
    {
        var net = new Net(problem);
        var sprayed = Enumerable.Range(0, net.Count).Where(a => net.Tool[a] >= 0).Sum(a => (long)net.Units[a]);
        if (!ExactBatch.Covers(net) || sprayed * sprayed > MostPairs)
            return (null, 0);
        // as is usual, up to where a plain list of the steps, the most urgent first, would end
        if (new Search(problem, Effort.Quick, seed: 1, progress: null, keep: null, threads: 1) { MostWork = 1 }.Run(CancellationToken.None) is not Outcome.Planned first)
            return (null, 0);
        var horizon = first.Score.Finish;
        using var clock = new CpuClock(cpuSeconds);
        var schedule = ExactBatch.Plain(net, horizon, "num_workers:2", clock.Over);
        if (schedule is not null && Auditor.Audit(problem, schedule) is [var fault, ..])
            throw new InvalidOperationException(fault.Text);
        return (schedule is null ? null : new Scoring(problem, keep: null).Of(schedule).Finish, clock.Seconds);
    }
}
