namespace Pipeline.Scheduling;

/// <summary>
/// Finds schedules. Pure: the same problem, effort and seed give the same outcome, however busy the machine is, however many cores it has and
/// whatever ran before. Another kind of processor or operating system may round the last bit of a figure otherwise, and so find another plan.
/// </summary>
public static class Solver
{
    /// <summary>Finds the best schedule it can with the given effort, on two threads.</summary>
    /// <inheritdoc cref="Solve(Problem, Effort, int, IProgress{SolveProgress}?, Keep?, int, CancellationToken)"/>
    public static Outcome Solve(
        Problem problem,
        Effort effort = Effort.Usual,
        int seed = 1,
        IProgress<SolveProgress>? progress = null,
        CancellationToken cancel = default) => Solve(problem, effort, seed, progress, keep: null, threads: 2, cancel);

    /// <summary>Finds the best schedule it can with the given effort.</summary>
    /// <param name="problem">What is to be done.</param>
    /// <param name="effort">How hard to try, in counted work.</param>
    /// <param name="seed">Starts the search's random numbers.</param>
    /// <param name="progress">Is told of the best so far, now and then.</param>
    /// <param name="keep">An earlier schedule to stay close to, or null.</param>
    /// <param name="threads">Threads to use, one or two; it changes the time taken, never the outcome.</param>
    /// <param name="cancel">Stops the search; the best so far is returned, if there is one.</param>
    /// <returns>A plan that the auditor has passed, or the reasons why there is none.</returns>
    /// <exception cref="ArgumentException">The problem, or what is to be kept, is malformed: an index out of range, a negative time and the like.</exception>
    public static Outcome Solve(
        Problem problem,
        Effort effort,
        int seed,
        IProgress<SolveProgress>? progress,
        Keep? keep,
        int threads,
        CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(problem);
        WellFormed.Check(problem);
        if (keep is not null)
            WellFormed.Check(problem, keep);
        return new Search(problem, effort, seed, progress, keep, threads).Run(cancel);
    }
}
