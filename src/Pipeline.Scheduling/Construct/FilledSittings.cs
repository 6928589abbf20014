namespace Pipeline.Scheduling;

/// <summary>
/// Plans filled sitting after sitting: some weightings first, then two searches over the keys that meet after a fixed amount of
/// work and go on from the better.
/// </summary>
internal sealed class FilledSittings
{
    private const int Legs = 3;
    private const double Hot = 0.3;
    private static readonly double[] ToolWorths = [0.1, 0.2, 0.15, 0.05];
    private static readonly double[] UrgencyWorths = [0.4, 0.1, 0.2, 0.05, 0.8, 0.02];
    private static readonly (double ChangePrice, int Patience, bool Joins)[] Turns = [(0, 6, true), (0.5, 30, false), (0, 15, true), (1, 6, false)];

    private readonly KeySearch[] searches;
    private readonly double[] keys;
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
        searches = [.. Enumerable.Range(0, 2).Select(w => new KeySearch(net, components, heads, Math.Max(1, keys.Max()), (2 * seed) + w))];
    }

    public long Work => searches.Sum(s => s.Work);

    /// <summary>Tries weightings until so much work is done; at least one, if it is the first plan.</summary>
    public void Try(long work, Action<Timetable> offer, CancellationToken cancel)
    {
        foreach (var filling in Fillings())
        {
            if (best is not null && (Work > work || cancel.IsCancellationRequested))
                return;
            if (searches[0].Fill(filling) is not { } cost || cost >= bestCost)
                continue;
            offer(searches[0].Filled);
            (best, bestCost) = (filling, cost);
        }
    }

    private IEnumerable<Filling> Fillings() =>
        from tool in ToolWorths
        from urgency in UrgencyWorths
        from turn in Turns
        select new Filling(keys, tool, turn.ChangePrice, urgency, turn.Patience, turn.Joins);

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
