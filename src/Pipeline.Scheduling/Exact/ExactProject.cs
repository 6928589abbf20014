using Google.OrTools.Sat;

namespace Pipeline.Scheduling;

/// <summary>What the exact solver has to say about a project.</summary>
/// <param name="Starts">Starts of the best schedule, or null if it found none.</param>
/// <param name="Bound">No schedule finishes sooner.</param>
/// <param name="IsImpossible">It is proved that there is no schedule.</param>
internal sealed record ExactAnswer(long[]? Starts, long Bound, bool IsImpossible);

/// <summary>A whole project as one constraint model.</summary>
internal static class ExactProject
{
    /// <summary>Solves with a budget in the solver's own deterministic units, the same on every machine.</summary>
    /// <param name="tasks">The project.</param>
    /// <param name="hint">A known schedule to do better than, or null.</param>
    /// <param name="lowerBound">No schedule finishes sooner.</param>
    /// <param name="budget">Deterministic units.</param>
    /// <param name="profile">The solver's parameters for how to search.</param>
    /// <param name="seed">Starts its random numbers.</param>
    /// <param name="cancel">Stops it.</param>
    public static ExactAnswer Solve(Tasks tasks, long[]? hint, long lowerBound, double budget, string profile, int seed, CancellationToken cancel)
    {
        var model = new CpModel();
        var horizon = hint is null ? tasks.Horizon : tasks.Finish(hint);
        var starts = new IntVar[tasks.Count];
        for (var i = 0; i < tasks.Count; i++)
            starts[i] = model.NewIntVar(tasks.Net[i].NotBefore, Math.Max(tasks.Net[i].NotBefore, horizon - tasks.Duration[i]), string.Empty);
        foreach (var arc in tasks.Arcs)
            model.Add(starts[arc.To] - starts[arc.From] >= arc.Lag);
        for (var r = 0; r < tasks.Capacity.Length; r++)
            AddPlace(model, tasks, r, starts);
        var finish = model.NewIntVar(lowerBound, horizon, string.Empty);
        for (var i = 0; i < tasks.Count; i++)
            model.Add(finish >= starts[i] + tasks.Duration[i]);
        model.Minimize(finish);
        for (var i = 0; hint is not null && i < tasks.Count; i++)
            model.AddHint(starts[i], hint[i]);

        var parameters = FormattableString.Invariant($"random_seed:{seed},max_deterministic_time:{budget},{profile}");
        return ExactSolver.Run(model, parameters, (status, solver) => status switch
        {
            CpSolverStatus.Optimal or CpSolverStatus.Feasible => new ExactAnswer([.. starts.Select(s => solver.Value(s))], ExactSolver.Bound(solver), IsImpossible: false),
            CpSolverStatus.Infeasible => new ExactAnswer(null, hint is null ? 0 : horizon, IsImpossible: hint is null),
            _ => new ExactAnswer(null, Math.Max(0, ExactSolver.Bound(solver)), IsImpossible: false),
        }, cancel);
    }

    private static void AddPlace(CpModel model, Tasks tasks, int place, IntVar[] starts)
    {
        var users = Enumerable.Range(0, tasks.Count).Where(i => tasks.Demand[i][place] > 0 && tasks.Duration[i] > 0).ToArray();
        if (users.Sum(i => (long)tasks.Demand[i][place]) <= tasks.Capacity[place])
            return;
        var intervals = users.Select(i => model.NewFixedSizeIntervalVar(starts[i], tasks.Duration[i], string.Empty)).ToArray();
        if (users.All(i => 2 * tasks.Demand[i][place] > tasks.Capacity[place]))
            model.AddNoOverlap(intervals);
        else
            model.AddCumulative((long)tasks.Capacity[place]).AddDemands(intervals, users.Select(i => (long)tasks.Demand[i][place]));
    }
}
