namespace Pipeline.Scheduling;

/// <summary>
/// Searches a pure project: breeding lists of tasks where nothing points backwards, the exact solver beside it, the best shared.
/// </summary>
internal sealed class ProjectSearch(Tasks tasks, Effort effort, int seed, int threads)
{
    /// <summary>One schedule of a list takes about as long as timing so many runs.</summary>
    private const int WorkPerTask = 2;

    public long Work { get; private set; }

    public long Bound { get; private set; }

    public bool IsImpossible { get; private set; }

    public long[]? Best { get; private set; }

    /// <summary>Searches on from a schedule, or from nothing.</summary>
    public void Run(long[]? start, long bound, Action<long[]> tell, CancellationToken cancel)
    {
        Bound = Math.Max(bound, tasks.ContentBound());
        Offer(start, tell);
        var share = effort switch { Effort.Quick => 0.04, Effort.Usual => 1.0, _ => 6.0 };
        if (!tasks.AreListable)
        {
            for (var turn = 0; turn < 2 && !IsDone && !cancel.IsCancellationRequested; turn++)
                Take(ExactProject.Solve(tasks, Best, Bound, 1.0 * share, workers: 8, seed + turn, cancel), tell);
            return;
        }

        // What a breeding run may use, in schedules; a larger project makes fewer.
        var schedules = (long)(share * 40_000_000 / tasks.Count);
        Breeding[] herds = [new Breeding(tasks, 2 * seed), new Breeding(tasks, (2 * seed) + 1)];
        Both(() => herds[0].Run(schedules / 50, Bound, cancel), () => herds[1].Run(schedules / 50, Bound, cancel));
        Share(herds, tell);
        ExactAnswer? answer = null;
        if (!IsDone)
        {
            Both(
                () => answer = ExactProject.Solve(tasks, Best, Bound, 1.2 * share, workers: 1, seed, cancel),
                () => herds[1].Run(schedules * 4 / 10, Bound, cancel));
            Take(answer!, tell);
            Share(herds, tell);
        }

        for (var turn = 0; turn < 3 && !IsDone && !cancel.IsCancellationRequested; turn++)
        {
            Both(() => herds[0].Run(schedules * 2 / 10, Bound, cancel), () => herds[1].Run(schedules * 2 / 10, Bound, cancel));
            Share(herds, tell);
        }

        Work = herds.Sum(h => h.Work) * tasks.Count * WorkPerTask;
    }

    private bool IsDone => IsImpossible || (Best is not null && tasks.Finish(Best) <= Bound);

    private void Both(Action one, Action other)
    {
        if (threads > 1)
            Parallel.Invoke(one, other);
        else
        {
            one();
            other();
        }
    }

    private void Share(Breeding[] herds, Action<long[]> tell)
    {
        foreach (var herd in herds)
            Offer(herd.Best?.Starts, tell);
        foreach (var herd in herds)
        {
            if (Best is not null && (herd.Best is null || herd.Best.Finish > tasks.Finish(Best)))
                herd.Welcome(Best);
        }
    }

    private void Take(ExactAnswer answer, Action<long[]> tell)
    {
        Offer(answer.Starts, tell);
        IsImpossible |= answer.IsImpossible && Best is null;
        Bound = Math.Max(Bound, answer.Bound);
    }

    private void Offer(long[]? starts, Action<long[]> tell)
    {
        if (starts is null || (Best is not null && tasks.Finish(starts) >= tasks.Finish(Best)))
            return;
        Best = starts;
        tell(starts);
    }
}
