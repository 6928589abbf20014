using Google.OrTools.Sat;

namespace Pipeline.Scheduling;

/// <summary>What the exact solver has to say about a batch.</summary>
/// <param name="Schedule">The best schedule it found, or null.</param>
/// <param name="Bound">No schedule finishes sooner.</param>
/// <param name="Work">The work it did, in its own deterministic units: one is about a second.</param>
internal sealed record ExactBatchAnswer(Schedule? Schedule, long Bound, double Work);

/// <summary>A whole attended batch as one constraint model that asks for the earliest finish.</summary>
internal static class ExactBatch
{
    /// <summary>
    /// Whether the model says all that the problem says. Not in it: work that several workers could do, several tools alike,
    /// a cap on attended ticks below the length of an interval, tools that take no time, and tools or past work in other hands
    /// than the tool's only user.
    /// </summary>
    public static bool Covers(Net net)
    {
        var earliest = Enumerable.Range(0, net.Count).Where(a => net.Done[a] < net.Units[a]).Select(a => net[a].NotBefore).DefaultIfEmpty(0).Min();
        for (var a = 0; a < net.Count; a++)
        {
            if (net.Attended[a] && net.Workers[a].Length != 1)
                return false;
            if (net.Tool[a] >= 0 && (net.Problem.Tools[net.Tool[a]].Count > 1 || net[a].SetUp + net[a].PerUnit + net[a].PutAway == 0))
                return false;
            if (net.Tool[a] >= 0 && net[a].Past.Any(r => r.End > earliest || r.Worker != net.Workers[a][0]))
                return false;
        }

        var hands = Enumerable.Range(0, net.Count).Where(a => net.Tool[a] >= 0).GroupBy(a => net.Tool[a], a => net.Workers[a][0]);
        return hands.All(h => h.Distinct().Count() == 1)
            && net.Problem.Workers.All(w => w.MostPerInterval is not { } most || w.Open.Open.All(o => o.Length <= most));
    }

    /// <summary>
    /// Looks for a schedule that finishes sooner than the one known, or for the proof that there is none.
    /// </summary>
    /// <param name="net">A problem that the model covers.</param>
    /// <param name="earliest">No unit's own work starts sooner in any schedule.</param>
    /// <param name="latest">No unit's own work starts later in a schedule that finishes sooner than <paramref name="known"/>.</param>
    /// <param name="lowerBound">No schedule finishes sooner.</param>
    /// <param name="known">A schedule, and its finish.</param>
    /// <param name="budget">In the solver's own deterministic units, the same on every machine.</param>
    /// <param name="seed">Starts its random numbers.</param>
    /// <param name="cancel">Stops it.</param>
    public static ExactBatchAnswer Better(
        Net net, long[] earliest, long[] latest, long lowerBound, (Schedule Schedule, long Finish) known, double budget, int seed, CancellationToken cancel)
    {
        var model = new ExactModel(net, earliest, latest, lowerBound, known.Finish - 1);
        if (!model.IsPossible)
            return new ExactBatchAnswer(null, known.Finish, 0);
        model.Hint(known.Schedule);
        var answer = Run(model, FormattableString.Invariant($"num_workers:1,linearization_level:2,random_seed:{seed},max_deterministic_time:{budget}"), cancel);
        return answer.Status switch
        {
            CpSolverStatus.Infeasible => new ExactBatchAnswer(null, known.Finish, answer.Work),
            CpSolverStatus.Optimal or CpSolverStatus.Feasible => new ExactBatchAnswer(answer.Schedule, answer.Bound, answer.Work),
            _ => new ExactBatchAnswer(null, Math.Clamp(answer.Bound, lowerBound, known.Finish - 1), answer.Work),
        };
    }

    /// <summary>
    /// The plain model as a textbook has it: nothing known beforehand but when each activity may start. For comparison only.
    /// </summary>
    /// <param name="net">A problem that the model covers.</param>
    /// <param name="horizon">Everything is finished by then.</param>
    /// <param name="parameters">The solver's parameters.</param>
    /// <param name="cancel">Stops it; the best so far is returned.</param>
    public static Schedule? Plain(Net net, long horizon, string parameters, CancellationToken cancel)
    {
        var earliest = new long[net.Offset[^1]];
        var latest = new long[net.Offset[^1]];
        for (var a = 0; a < net.Count; a++)
        {
            Array.Fill(earliest, net[a].NotBefore, net.Offset[a], net.Units[a]);
            Array.Fill(latest, horizon - net.Duration[a], net.Offset[a], net.Units[a]);
        }

        var model = new ExactModel(net, earliest, latest, earliest.Min(), horizon);
        return model.IsPossible ? Run(model, parameters, cancel).Schedule : null;
    }

    /// <summary>Whether the model takes a schedule for one; every schedule that the auditor passes is.</summary>
    public static bool Admits(Net net, long[] earliest, long[] latest, Schedule schedule, long finish)
    {
        var model = new ExactModel(net, earliest, latest, earliest.Min(), finish);
        return model.IsPossible && model.Fix(schedule) && Run(model, "num_workers:1", CancellationToken.None).Schedule is not null;
    }

    private static (CpSolverStatus Status, Schedule? Schedule, long Bound, double Work) Run(ExactModel model, string parameters, CancellationToken cancel)
    {
        using var solver = new CpSolver { StringParameters = parameters };
        using var registration = cancel.Register(solver.StopSearch);
        using var stop = new StopWhenAsked(cancel);
        if (cancel.IsCancellationRequested)
            return (CpSolverStatus.Unknown, null, long.MinValue, 0);
        var status = solver.Solve(model.Model, stop);
        if (status == CpSolverStatus.ModelInvalid)
            throw new InvalidOperationException("The exact model is malformed: " + model.Model.Validate());
        var work = solver.Response!.DeterministicTime;
        return status is CpSolverStatus.Optimal or CpSolverStatus.Feasible
            ? (status, model.Read(solver), Bound(solver), work)
            : (status, null, Bound(solver), work);
    }

    private static long Bound(CpSolver solver) => (long)Math.Ceiling(Math.Clamp(solver.BestObjectiveBound, -1e15, 1e15) - 1e-6);
}
