using Google.OrTools.Sat;
using Pipeline.Scheduling;

namespace Pipeline.Benchmarks.Scheduling;

/// <summary>
/// The baseline: a whole batch as one constraint model, without bounds, hint or first plan, as a textbook has it. Lots are parted
/// as in the first plan: where they could be parted anywhere, it finds no plan even for the smallest batches.
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
        var schedule = Solve(net, first.Schedule, horizon, clock.Over);
        if (schedule is not null && Auditor.Audit(problem, schedule) is [var fault, ..])
            throw new InvalidOperationException(fault.Text);
        return (schedule is null ? null : new Scoring(problem, keep: null).Of(schedule).Finish, clock.Seconds);
    }

    // Nothing is known beforehand but when each activity may start.
    private static Schedule? Solve(Net net, Schedule first, long horizon, CancellationToken cancel)
    {
        var earliest = new long[net.Offset[^1]];
        var latest = new long[net.Offset[^1]];
        for (var a = 0; a < net.Count; a++)
        {
            Array.Fill(earliest, net[a].NotBefore, net.Offset[a], net.Units[a]);
            Array.Fill(latest, horizon - net.Duration[a], net.Offset[a], net.Units[a]);
        }

        var model = new ExactModel(net, LotParts.AsIn(net, first), earliest, latest, earliest.Min(), horizon);
        if (model.IsPossible)
            model.AskForFinish();
        return !model.IsPossible || cancel.IsCancellationRequested ? null : ExactSolver.Run(
            model.Model,
            "num_workers:2",
            (status, solver) => status is CpSolverStatus.Optimal or CpSolverStatus.Feasible ? model.Read(solver) : null,
            cancel);
    }
}
