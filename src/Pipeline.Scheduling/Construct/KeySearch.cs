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
    private readonly SittingFiller filler;
    private readonly OpenTime clock;
    private readonly Random random;
    private readonly double span;
    private readonly double meanWork;

    public KeySearch(Net net, Components components, Heads heads, double horizon, int seed)
    {
        this.net = net;
        this.components = components;
        filler = new SittingFiller(net, components, new Dispatcher(net, components, heads), horizon);
        clock = new OpenTime(net, Enumerable.Range(0, net.Problem.Workers.Length), once: true);
        random = new Random(seed);
        var attended = Enumerable.Range(0, net.Count).Where(a => net.Attended[a]).ToArray();
        meanWork = Math.Max(1, attended.Select(a => (double)net[a].SetUp + net.Work(a, net.Units[a])).DefaultIfEmpty(1).Average());
        span = attended.Sum(a => (double)net[a].SetUp + net.Work(a, net.Units[a]));
    }

    public Timetable? Best { get; private set; }

    public double BestCost { get; private set; } = double.MaxValue;

    /// <summary>How the best of the last run was filled.</summary>
    public Filling BestFilling { get; private set; } = new([], 0, 0, 0, 0, Joins: false);

    public long Work { get; private set; }

    /// <summary>What was filled last; it stays as it is when something else is filled.</summary>
    public Timetable Filled => Table.Copy();

    private Timetable Table => filler.Table;

    /// <summary>Goes on from a filling for so much work.</summary>
    public void Run(Filling from, double fromCost, long work, double hot, CancellationToken cancel)
    {
        var (now, cost) = (from, fromCost);
        (BestFilling, BestCost) = (from, fromCost);
        var begun = Work;
        Fill(from, 0);
        filler.Keep();
        while (Work - begun < work && !cancel.IsCancellationRequested)
        {
            var done = (double)(Work - begun) / work;
            var (next, first) = Change(now, 0.3 * Math.Pow(0.03, done));
            var price = Fill(next, first);
            if (price < BestCost)
                (Best, BestFilling, BestCost) = (Filled, next, price.Value);
            if (price is not { } newCost || (newCost > cost && random.NextDouble() >= Math.Exp((cost - newCost) / (hot * meanWork * Math.Pow(0.05, done)))))
            {
                TakeBack();
                continue;
            }

            filler.Keep();
            (now, cost) = (next, newCost);
        }
    }

    /// <summary>The cost of a timetable filled so, or null if not everything could be put in.</summary>
    public double? Fill(Filling filling) => Fill(filling, 0);

    private double? Fill(Filling filling, int from)
    {
        var before = Table.Work;
        var isWhole = filler.Fill(filling, from);
        Work += 1 + (WorkPerPut * (Table.Work - before));
        return isWhole ? Cost(Table) : null;
    }

    private void TakeBack()
    {
        var before = Table.Work;
        filler.TakeBack();
        Work += WorkPerPut * (Table.Work - before);
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
        return (1000 * late) + clock.At(finish) + (1e-4 * finish) + (weight > 0 ? completion / weight : 0) + (0.5 * changes);
    }

    // Another filling, and the first sitting that it could change.
    private (Filling Filling, int First) Change(Filling filling, double strength)
    {
        if (random.Next(20) == 0)
        {
            var other = filling with
            {
                ToolWorth = random.NextDouble() * 0.5,
                ChangePrice = Math.Max(0, (random.NextDouble() * 1.5) - 0.5),
                UrgencyWorth = Math.Exp(-4 * random.NextDouble()),
                Patience = 1 + random.Next(30),
                Joins = random.Next(2) == 0,
            };
            return (other, 0);
        }

        var keys = (double[])filling.Keys.Clone();
        var first = int.MaxValue;
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

            first = Math.Min(first, filler.FirstOf(components.Of[a]));
        }

        return (filling with { Keys = keys }, first);
    }
}
