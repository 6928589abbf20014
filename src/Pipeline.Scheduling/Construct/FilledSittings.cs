namespace Pipeline.Scheduling;

/// <summary>
/// Plans filled sitting after sitting: some weightings first, then two searches over the keys that meet after a fixed amount of
/// work and go on from the better.
/// </summary>
internal sealed class FilledSittings
{
    private const int Legs = 3;
    private const double Hot = 0.3;
    private const int Tries = 16;
    private const int Seeds = 256;
    private static readonly double[] ChangeWorths = [10, 3, 30, 100];
    private static readonly (double ToolWorth, double UrgencyWorth, double Shake)[] Choices = [(0.2, 0.1, 2), (0.1, 0.1, 1), (0.2, 0.05, 1)];

    private readonly KeySearch[] searches;
    private readonly double[] keys;
    private readonly long longest;
    private readonly int threads;
    private Filling? best;
    private double bestCost = double.MaxValue;

    /// <param name="net">The problem.</param>
    /// <param name="components">Its groups.</param>
    /// <param name="heads">The earliest start of every unit.</param>
    /// <param name="latest">Per activity, when it should start at the latest if the whole is to be finished early.</param>
    /// <param name="seed">Starts the random numbers.</param>
    /// <param name="threads">One or two; it changes the time taken only.</param>
    public FilledSittings(Net net, Components components, Heads heads, double[] latest, int seed, int threads)
    {
        this.threads = threads;
        var clock = new OpenTime(net, Enumerable.Range(0, net.Problem.Workers.Length), once: true);
        keys = [.. latest.Select(t => (double)clock.At((long)t))];
        longest = net.LongestOpen.DefaultIfEmpty(0).Max();
        searches = [.. Enumerable.Range(0, 2).Select(w => new KeySearch(net, components, heads, (2 * seed) + w))];
    }

    public long Work => searches.Sum(s => s.Work);

    /// <summary>Tries weightings until so much work is done; at least one, if it is the first plan.</summary>
    public void Try(long work, Action<Timetable> offer, CancellationToken cancel)
    {
        foreach (var filling in Fillings())
        {
            if (best is not null && (Work > work || cancel.IsCancellationRequested))
                return;
            if (searches[0].Fill(filling) is not { } table)
                continue;
            offer(table);
            if (searches[0].Cost(table) is var cost && cost < bestCost)
                (best, bestCost) = (filling, cost);
        }
    }

    private IEnumerable<Filling> Fillings()
    {
        var plain = ChangeWorths.SelectMany(worth => new[] { longest / 2, longest }.Select(full => new Filling(keys, worth, full))).ToArray();
        var choices = Choices.Select(c => new Choice(Tries, c.ToolWorth, c.UrgencyWorth, longest * c.Shake, new int[Seeds]));
        return plain.Concat(choices.SelectMany(choice => plain.Select(filling => filling with { Choice = choice })));
    }

    /// <summary>Searches over the keys for so much work.</summary>
    public void Improve(long work, Action<Timetable> offer, CancellationToken cancel)
    {
        for (var leg = 0; best is not null && leg < Legs && !cancel.IsCancellationRequested; leg++)
        {
            var from = best;
            void Search(int w) => searches[w].Run(from, bestCost, work / 2 / Legs, Hot * Math.Pow(0.5, leg), cancel);
            if (threads > 1)
                Parallel.For(0, 2, new ParallelOptions { MaxDegreeOfParallelism = 2 }, Search);
            else
            {
                Search(0);
                Search(1);
            }

            foreach (var search in searches)
            {
                if (search.Best is not { } table || search.BestCost >= bestCost)
                    continue;
                (best, bestCost) = (search.BestFilling, search.BestCost);
                offer(table);
            }
        }
    }
}
