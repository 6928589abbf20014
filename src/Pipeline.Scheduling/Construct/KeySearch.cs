namespace Pipeline.Scheduling;

/// <summary>
/// Looks for the keys and weightings with which the sittings fill best: a few are changed at a time, and kept if the plan is
/// better or, early on, not much worse. Everything follows from the seed and the work it may use.
/// </summary>
internal sealed class KeySearch
{
    // Putting a run in takes about as long as timing so many.
    private const int WorkPerPut = 8;

    private readonly Net net;
    private readonly Components components;
    private readonly Dispatcher dispatcher;
    private readonly OpenTime clock;
    private readonly Random random;
    private readonly double span;
    private readonly double meanWork;
    private readonly long longest;

    public KeySearch(Net net, Components components, Heads heads, int seed)
    {
        this.net = net;
        this.components = components;
        dispatcher = new Dispatcher(net, components, heads);
        clock = new OpenTime(net, Enumerable.Range(0, net.Problem.Workers.Length), once: true);
        random = new Random(seed);
        longest = net.LongestOpen.DefaultIfEmpty(0).Max();
        var attended = Enumerable.Range(0, net.Count).Where(a => net.Attended[a]).ToArray();
        meanWork = Math.Max(1, attended.Select(a => (double)net[a].SetUp + net.Work(a, net.Units[a])).DefaultIfEmpty(1).Average());
        span = attended.Sum(a => (double)net[a].SetUp + net.Work(a, net.Units[a]));
    }

    public Timetable? Best { get; private set; }

    public double BestCost { get; private set; } = double.MaxValue;

    /// <summary>How the best of the last run was filled.</summary>
    public Filling BestFilling { get; private set; } = new([], 0, 0);

    public long Work { get; private set; }

    /// <summary>Goes on from a filling for so much work.</summary>
    public void Run(Filling from, double fromCost, long work, double hot, CancellationToken cancel)
    {
        var (now, cost) = (from, fromCost);
        (BestFilling, BestCost) = (from, fromCost);
        var begun = Work;
        while (Work - begun < work && !cancel.IsCancellationRequested)
        {
            var done = (double)(Work - begun) / work;
            var next = Change(now, 0.3 * Math.Pow(0.03, done));
            var table = Fill(next);
            if (table is null)
                continue;
            var price = Cost(table);
            if (price < BestCost)
                (Best, BestFilling, BestCost) = (table, next, price);
            if (price > cost && random.NextDouble() >= Math.Exp((cost - price) / (hot * meanWork * Math.Pow(0.05, done))))
                continue;
            (now, cost) = (next, price);
        }
    }

    /// <summary>A timetable filled so, or null if not everything could be put in.</summary>
    public Timetable? Fill(Filling filling)
    {
        var table = new SittingFiller(net, components, dispatcher).Fill(filling);
        Work += 1 + (WorkPerPut * (table?.Work ?? 0));
        return table is null ? null : dispatcher.Complete(table, new Dispatch(filling.Keys, 0.5));
    }

    /// <summary>Lateness above all, then the finish on the clock of those at hand; the mean completion says which way is downhill.</summary>
    public double Cost(Timetable table)
    {
        double completion = 0;
        double weight = 0;
        long finish = 0;
        long changes = 0;
        foreach (var run in table.Runs)
        {
            if (run.IsPast)
                continue;
            finish = Math.Max(finish, run.WorkStart + ((run.Units - 1) * net.Step[run.Activity]) + net.Duration[run.Activity]);
            changes += run.CleanOut + net[run.Activity].SetUp;
            var ticks = run.End - run.WorkStart;
            completion += ticks * (double)clock.At(run.End);
            weight += ticks;
        }

        double late = 0;
        foreach (var due in net.Problem.Dues)
            late += Math.Max(0, table.Starts[net.Offset[due.Activity + 1] - 1] + net.Duration[due.Activity] + due.Afterwards - due.By) * due.WeightPerTick * (due.IsHard ? 1000 : 1);
        return (1000 * late) + clock.At(finish) + (1e-4 * finish) + (weight > 0 ? completion / weight : 0) + (0.1 * changes);
    }

    private Filling Change(Filling filling, double strength)
    {
        var keys = (double[])filling.Keys.Clone();
        for (var count = 1 + random.Next(3); count > 0; count--)
        {
            var a = random.Next(keys.Length);
            if (random.Next(2) == 0)
                keys[a] += strength * span * (random.NextDouble() - 0.5);
            else
            {
                // right before or after another
                var b = random.Next(keys.Length);
                keys[a] = keys[b] + ((random.NextDouble() - 0.5) * meanWork);
            }
        }

        var changeWorth = random.Next(20) == 0 ? Math.Exp((random.NextDouble() * 7) - 1) : filling.ChangeWorth;
        var fullFrom = random.Next(20) == 0 ? (long)(longest * random.NextDouble() * 1.2) : filling.FullFrom;
        return new Filling(keys, changeWorth, fullFrom) { Choice = filling.Choice is { } choice ? Change(choice) : null };
    }

    private Choice Change(Choice choice)
    {
        var seeds = (int[])choice.Seeds.Clone();
        for (var count = random.Next(4); count > 0; count--)
            seeds[random.Next(seeds.Length)] = random.Next(1 << 20);
        return new Choice(
            choice.Tries,
            random.Next(20) == 0 ? random.NextDouble() * 0.5 : choice.ToolWorth,
            random.Next(20) == 0 ? random.NextDouble() * 0.4 : choice.UrgencyWorth,
            random.Next(20) == 0 ? longest * Math.Exp((random.NextDouble() * 4) - 2) : choice.Shake,
            seeds);
    }
}
