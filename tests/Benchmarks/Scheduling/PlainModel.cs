using Pipeline.Scheduling;

namespace Pipeline.Benchmarks.Scheduling;

/// <summary>
/// The baseline: a whole batch as a textbook's constraint model, without bounds, hint or first plan. Lots are parted beforehand
/// into the largest runs that fit the shortest interval and every greatest wait.
/// </summary>
internal static class PlainModel
{
    // Its tools need a literal for every pair of runs.
    private const int MostPairs = 2_000_000;

    /// <summary>The finish it comes to in the time, or null; with the CPU seconds it took.</summary>
    public static (long? Finish, double CpuSeconds) Solve(Problem problem, double cpuSeconds)
    {
        var net = new Net(problem);
        var together = Together(net);
        var sprayed = Enumerable.Range(0, net.Count).Where(a => net.Tool[a] >= 0).Sum(a => (long)Math.Ceiling((double)net.Units[a] / together[a]));
        if (!ExactBatch.Covers(net) || sprayed * sprayed > MostPairs)
            return (null, 0);
        var horizon = problem.Workers.Max(w => w.Open.Open[^1].End);
        using var clock = new CpuClock(cpuSeconds);
        var schedule = ExactBatch.Plain(net, together, horizon, "num_workers:2", clock.Over);
        if (schedule is not null && Auditor.Audit(problem, schedule) is [var fault, ..])
            throw new InvalidOperationException(fault.Text);
        return (schedule is null ? null : new Scoring(problem, keep: null).Of(schedule).Finish, clock.Seconds);
    }

    private static int[] Together(Net net)
    {
        var together = Enumerable.Range(0, net.Count).Select(a => net.Attended[a] ? Fitting(net, a) : net.Units[a]).ToArray();
        for (var again = true; again;)
        {
            again = false;
            foreach (var wait in net.Problem.Waits.Where(w => w.Greatest is not null && w.Scope == Scope.UnitByUnit && net.Attended[w.From] && net.Attended[w.To]))
            {
                var most = Math.Min(together[wait.From], together[wait.To]);
                while (most > 1 && !Keeps(net, wait, most))
                    most--;
                again |= together[wait.From] != most || together[wait.To] != most;
                together[wait.From] = together[wait.To] = most;
            }
        }

        return together;
    }

    private static int Fitting(Net net, int a)
    {
        var shortest = net.Open[net.Workers[a][0]].Min(o => o.Length);
        var around = net[a].SetUp + net[a].PutAway;
        if (net[a].Tool is { } use)
        {
            var tool = net.Problem.Tools[use.Tool];
            around += tool.CleanOut.Max(row => row[use.Load]) + tool.CloseDown[use.Load];
        }

        return (int)Math.Clamp((shortest - around) / Math.Max(1, net[a].PerUnit), 1, net.Units[a]);
    }

    // One run after the other by the same hands, each unit's wait between its least and its greatest.
    private static bool Keeps(Net net, Wait wait, int units)
    {
        var (from, to) = (net[wait.From], net[wait.To]);
        var drift = (units - 1) * (to.PerUnit - from.PerUnit);
        var after = Math.Max(net.Work(wait.From, units) + to.SetUp, net.Duration[wait.From] + (wait.Least ?? 0) - Math.Min(0, drift));
        return after + Math.Max(0, drift) <= net.Duration[wait.From] + wait.Greatest;
    }
}
