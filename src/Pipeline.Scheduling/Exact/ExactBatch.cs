using Google.OrTools.Sat;

namespace Pipeline.Scheduling;

/// <summary>What the exact solver has to say about a batch.</summary>
/// <param name="Schedule">The best schedule it found, or null.</param>
/// <param name="Bound">No schedule with such parts finishes sooner.</param>
internal sealed record ExactBatchAnswer(Schedule? Schedule, long Bound);

/// <summary>A whole attended batch as one constraint model that asks for the earliest finish.</summary>
internal static class ExactBatch
{
    /// <summary>
    /// Whether the model says all that the problem says. Not in it: tools that take no time, past work with a tool that
    /// goes on when other work may begin, and places that past work alone may have filled beyond their room.
    /// </summary>
    public static bool Covers(Net net)
    {
        var earliest = Enumerable.Range(0, net.Count).Where(a => net.Done[a] < net.Units[a]).Select(a => net[a].NotBefore).DefaultIfEmpty(0).Min();
        for (var a = 0; a < net.Count; a++)
        {
            if (net.Tool[a] >= 0 && (net[a].SetUp + net[a].PerUnit + net[a].PutAway == 0 || net[a].Past.Any(r => r.End > earliest)))
                return false;
        }

        return !net.HasStays || Enumerable.Range(0, net.Problem.Places.Length).All(p => PlaceStays.Past(net, p) <= net.Problem.Places[p].Capacity);
    }

    /// <summary>Whether there is a choice of hands or of tools alike, or a cap on a day: more to search through than the same pieces have elsewhere.</summary>
    public static bool IsShared(Net net) => Enumerable.Range(0, net.Count).Any(a => net.Workers[a].Length > 1 || (net.Tool[a] >= 0 && net.Problem.Tools[net.Tool[a]].Count > 1))
        || net.Problem.Workers.Any(w => w.MostPerDay is { } most && w.Open.Days.Any(day => day.Sum(open => open.Length) > most));

    /// <summary>
    /// Looks for a schedule that finishes sooner than the one known, or for the proof that there is none.
    /// </summary>
    /// <param name="net">A problem that the model covers.</param>
    /// <param name="parts">Where lots may be parted.</param>
    /// <param name="earliest">No unit's own work starts sooner in any schedule.</param>
    /// <param name="latest">No unit's own work starts later in a schedule that finishes sooner than <paramref name="known"/>.</param>
    /// <param name="lowerBound">No schedule finishes sooner.</param>
    /// <param name="known">A schedule parted no more than the parts allow, and its finish.</param>
    /// <param name="budget">In the solver's own deterministic units, the same on every machine.</param>
    /// <param name="seed">Starts its random numbers.</param>
    /// <param name="cancel">Stops it.</param>
    public static ExactBatchAnswer Better(
        Net net,
        LotParts parts,
        long[] earliest,
        long[] latest,
        long lowerBound,
        (Schedule Schedule, long Finish) known,
        double budget,
        int seed,
        CancellationToken cancel)
    {
        var model = new ExactModel(net, parts, earliest, latest, lowerBound, known.Finish - 1);
        if (!model.IsPossible)
            return new ExactBatchAnswer(null, known.Finish);
        if (cancel.IsCancellationRequested)
            return new ExactBatchAnswer(null, lowerBound);
        model.AskForFinish();
        model.Hint(known.Schedule);
        return ExactSolver.Run(model.Model, Parameters(budget, seed), (status, solver) => status switch
        {
            CpSolverStatus.ModelInvalid => throw new InvalidOperationException("The exact model is malformed: " + model.Model.Validate()),
            CpSolverStatus.Infeasible => new ExactBatchAnswer(null, known.Finish),
            CpSolverStatus.Optimal or CpSolverStatus.Feasible => new ExactBatchAnswer(Pressed.Of(net, model.Read(solver)), ExactSolver.Bound(solver)),
            _ => new ExactBatchAnswer(null, Math.Clamp(ExactSolver.Bound(solver), lowerBound, known.Finish - 1)),
        }, cancel);
    }

    /// <summary>Looks for a schedule that is less late than the one known; null if it finds none.</summary>
    /// <param name="net">A problem that the model covers.</param>
    /// <param name="parts">Where lots may be parted.</param>
    /// <param name="earliest">No unit's own work starts sooner in any schedule.</param>
    /// <param name="latest">Nor later in one that is finished by <paramref name="until"/>.</param>
    /// <param name="lowerBound">No schedule finishes sooner.</param>
    /// <param name="until">Everything is to be finished by then.</param>
    /// <param name="known">A schedule that is late, parted no more than the parts allow and finished by then.</param>
    /// <param name="budget">In the solver's own deterministic units, the same on every machine.</param>
    /// <param name="seed">Starts its random numbers.</param>
    /// <param name="cancel">Stops it.</param>
    public static Schedule? LessLate(
        Net net, LotParts parts, long[] earliest, long[] latest, long lowerBound, long until, Schedule known, double budget, int seed, CancellationToken cancel)
    {
        var model = new ExactModel(net, parts, earliest, latest, lowerBound, until);
        if (!model.IsPossible || cancel.IsCancellationRequested)
            return null;
        model.AskForLateness(net.Problem.Dues, known);
        model.Hint(known);
        return ExactSolver.Run(
            model.Model,
            Parameters(budget, seed),
            (status, solver) => status is CpSolverStatus.Optimal or CpSolverStatus.Feasible ? Pressed.Of(net, model.Read(solver)) : null,
            cancel);
    }

    private static string Parameters(double budget, int seed) =>
        FormattableString.Invariant($"num_workers:1,linearization_level:2,random_seed:{seed},max_deterministic_time:{budget}");
}
