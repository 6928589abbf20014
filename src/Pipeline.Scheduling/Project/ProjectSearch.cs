namespace Pipeline.Scheduling;

/// <summary>
/// Searches a pure project: two herds of lists are bred, mostly apart, the exact solver works beside them, and the best is shared.
/// </summary>
internal sealed class ProjectSearch
{
    /// <summary>Runs that are timed while so many elementary steps of a list scheme are done.</summary>
    private const int StepsPerPlacement = 20;

    /// <summary>Beyond, the longest ways between all pairs take too much room.</summary>
    private const int MostWithWays = 1000;

    /// <summary>Beyond, ticks are too fine to be kept one by one.</summary>
    private const long MostTicks = 1 << 22;

    private const int Turns = 4;

    // Up to so many tasks the exact solver soon proves what lists no longer better; it is asked longer, and they are bred less.
    private const int Few = 40;

    private readonly Tasks tasks;
    private readonly int seed;
    private readonly int threads;
    private readonly Action<long[]> tell;
    private readonly CancellationToken cancel;
    private readonly long steps;
    private readonly double share;
    private readonly Breeding[] herds;
    private int asked;

    /// <param name="tasks">The project.</param>
    /// <param name="effort">How much work.</param>
    /// <param name="seed">Starts the random numbers.</param>
    /// <param name="threads">One or two; the outcome is the same.</param>
    /// <param name="bound">No schedule finishes sooner.</param>
    /// <param name="tell">Is told each better schedule.</param>
    /// <param name="cancel">Ends the search.</param>
    public ProjectSearch(Tasks tasks, Effort effort, int seed, int threads, long bound, Action<long[]> tell, CancellationToken cancel)
    {
        this.tasks = tasks;
        this.seed = seed;
        this.threads = threads;
        this.tell = tell;
        this.cancel = cancel;
        Bound = Math.Max(bound, tasks.ContentBound());
        (steps, share) = effort switch
        {
            Effort.Quick => (20_000_000L, 0.03),
            Effort.Usual => (1_400_000_000L, 1.0),
            _ => (8_000_000_000L, 6.0),
        };
        if (!tasks.AreListable)
            steps += steps / 2;
        herds = tasks.Horizon > MostTicks || (!tasks.AreListable && tasks.Count > MostWithWays) ? [] : Herds();
    }

    public long Work => herds.Sum(h => h.Work) / StepsPerPlacement;

    public long Bound { get; private set; }

    public bool IsImpossible { get; private set; }

    public long[]? Best { get; private set; }

    private bool IsDone => IsImpossible || cancel.IsCancellationRequested || (Best is not null && tasks.Finish(Best) <= Bound);

    /// <summary>Searches on from a schedule, or from nothing.</summary>
    public void Run(long[]? start)
    {
        Offer(start);
        Breed(steps / 50);
        Ask(0.6, steps / 10);
        var isFew = tasks.Count <= Few;
        Ask(isFew ? 6 : 1.4, steps * (isFew ? 5 : 2) / 10);
        for (var turn = isFew ? Turns - 1 : 0; turn < Turns && !IsDone; turn++)
        {
            // without any schedule the lists lead nowhere, and the question is whether there is one
            if (Best is null)
                Ask(1.0, steps / 20);
            else
                Breed(steps * 17 / 100);
            // herds kept apart agree on different schedules; what one has found helps the other only in the end
            if (turn == Turns - 2)
                Mix();
        }
    }

    // Both herds go on for so many steps.
    private void Breed(long more)
    {
        if (IsDone)
            return;
        Both([.. herds.Select<Breeding, Action>(herd => () => herd.Run(more, Bound, cancel))]);
        Share();
    }

    // The exact solver takes the place of one herd for a while.
    private void Ask(double budget, long more)
    {
        if (IsDone)
            return;
        ExactAnswer? answer = null;
        var hint = Best;
        var luck = seed + asked++;
        Both([
            () => answer = ExactProject.Solve(tasks, hint, Bound, budget * share, "num_workers:1,linearization_level:0", luck, cancel),
            .. herds.Skip(1).Select<Breeding, Action>(herd => () => herd.Run(more, Bound, cancel))]);
        Offer(answer!.Starts);
        IsImpossible |= answer.IsImpossible && Best is null;
        Bound = Math.Max(Bound, answer.Bound);
        Share();
    }

    private void Both(Action[] actions)
    {
        if (threads > 1)
            Parallel.Invoke(actions);
        else
        {
            foreach (var action in actions)
                action();
        }
    }

    private void Share()
    {
        foreach (var herd in herds)
            Offer(herd.Best?.Starts);
        // where lists lead nowhere often enough, whatever is found is worth having at once
        if (!tasks.AreListable)
            Mix();
    }

    private void Mix()
    {
        foreach (var herd in herds)
        {
            if (Best is not null && (herd.Best is null || herd.Best.Finish > tasks.Finish(Best)))
                herd.Welcome(Best);
        }
    }

    private void Offer(long[]? starts)
    {
        if (starts is null || (Best is not null && tasks.Finish(starts) >= tasks.Finish(Best)))
            return;
        Best = starts;
        tell(starts);
    }

    // The more children there will be, the more members are worth while.
    private Breeding[] Herds()
    {
        var ways = tasks.AreListable ? null : new LongestWays(tasks);
        var order = new TaskOrder(tasks, ways);
        var children = steps / (30.0 * tasks.Count);
        var size = Math.Clamp((int)Math.Sqrt(children), 40, 2000);
        return [.. Enumerable.Range(2 * seed, 2).Select(s =>
            new Breeding(tasks, order, ways is null ? new ListSchedule(tasks) : new LagSchedule(tasks, ways), size, s))];
    }
}
