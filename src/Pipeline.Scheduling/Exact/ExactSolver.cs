using Google.OrTools.Sat;

namespace Pipeline.Scheduling;

/// <summary>Runs the constraint solver on a model, so that it can be stopped.</summary>
internal static class ExactSolver
{
    /// <summary>Solves and reads the answer.</summary>
    /// <param name="model">What to solve.</param>
    /// <param name="parameters">How to search, and with which budget.</param>
    /// <param name="read">Makes an answer of the status and the solver's values.</param>
    /// <param name="cancel">Stops it; the best so far is read.</param>
    public static T Run<T>(CpModel model, string parameters, Func<CpSolverStatus, CpSolver, T> read, CancellationToken cancel)
    {
        using var solver = new CpSolver { StringParameters = parameters };
        using var stop = new StopWhenAsked(cancel);
        using var registration = cancel.Register(solver.StopSearch);
        return read(solver.Solve(model, stop), solver);
    }

    /// <summary>What the solver has proved of a whole number that is to be small, rounded up.</summary>
    public static long Bound(CpSolver solver) => (long)Math.Ceiling(Math.Clamp(solver.BestObjectiveBound, -1e15, 1e15) - 1e-6);
}
