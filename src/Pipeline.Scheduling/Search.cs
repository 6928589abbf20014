namespace Pipeline.Scheduling;

/// <summary>One whole search: checks, first plans, better plans, bound, audit, reasons.</summary>
internal sealed class Search(Problem problem, Effort effort, int seed, IProgress<SolveProgress>? progress, Keep? keep, int threads)
{
    private readonly Scoring scoring = new(problem, keep);
    private Schedule? best;
    private Score bestScore;
    private long work;

    public Outcome Run(CancellationToken cancel)
    {
        _ = threads;
        var net = new Net(problem);
        if (Feasibility.Of(net) is { IsEmpty: false } obstacles)
            return new Outcome.Impossible(obstacles);
        var components = new Components(net);
        var rings = Heads.Of(net, components, hours: null);
        if (rings.Obstacle is { } ring)
            return new Outcome.Impossible([ring]);
        var hours = new Hours(net);
        var heads = Heads.Of(net, components, hours);
        if (heads.Obstacle is { } late)
            return new Outcome.Impossible([late]);
        var bound = new LowerBound(net, components, hours, heads);
        var dispatcher = new Dispatcher(net, components, heads);
        var obstacle = FirstPlans(net, dispatcher, bound, cancel);
        if (best is null)
            return new Outcome.Impossible([obstacle ?? new Obstacle.NotFound(), new Obstacle.NotFound()]);
        bound.Sharpen(bestScore.Finish);
        return Finish(net, bound, cancel.IsCancellationRequested);
    }

    private Obstacle? FirstPlans(Net net, Dispatcher dispatcher, LowerBound bound, CancellationToken cancel)
    {
        Obstacle? obstacle = null;
        var random = new Random(seed);
        var units = bound.LatestStarts(bound.Finish);
        var latest = Enumerable.Range(0, net.Count).Select(a => (double)units[net.Offset[a]]).ToArray();
        var rounds = effort == Effort.Quick ? 20 : 100;
        for (var i = 0; i < rounds && (best is null || !cancel.IsCancellationRequested); i++)
        {
            var noise = i == 0 ? 0 : 0.02 * i;
            var keys = latest.Select(t => t * (1 + (noise * (random.NextDouble() - 0.5)))).ToArray();
            var table = dispatcher.Fill(new Dispatch(keys, PartingWorth: i % 3 == 0 ? 0.5 : i % 3 == 1 ? 1e9 : 0));
            obstacle = dispatcher.Obstacle ?? obstacle;
            if (table is not null)
            {
                work += table.Work;
                Offer(WriteDown.Of(table));
                progress?.Report(new SolveProgress(bestScore, bound.Finish, i, rounds));
            }
        }

        return obstacle;
    }

    private void Offer(Schedule schedule)
    {
        var score = scoring.Of(schedule);
        if (best is not null && scoring.Compare(score, bestScore) >= 0)
            return;
        best = schedule;
        bestScore = score;
    }

    private Outcome Finish(Net net, LowerBound bound, bool stoppedEarly)
    {
        var faults = Auditor.Audit(problem, best!);
        if (faults.Count > 0)
            throw new InvalidOperationException($"The solver made a schedule that is wrong: {faults[0].Kind}: {faults[0].Text}");
        var explanation = new Explanation(net, best!);
        var planned = new Outcome.Planned(
            best!,
            bestScore,
            bound.Against(bestScore),
            explanation.Reasons,
            explanation.CriticalRuns(),
            explanation.Finishes(),
            stoppedEarly,
            work);
        if (bestScore.HardLateness == 0)
            return planned;
        var missed = new List<Obstacle>();
        for (var d = 0; d < problem.Dues.Length; d++)
        {
            var due = problem.Dues[d];
            var finish = planned.Finishes[due.Activity].Finish + due.Afterwards;
            if (due.IsHard && finish > due.By)
                missed.Add(new Obstacle.HardDueMissed(d, finish, bound.EarliestFinish(due.Activity) + due.Afterwards));
        }

        return new Outcome.Impossible([.. missed], planned);
    }
}
