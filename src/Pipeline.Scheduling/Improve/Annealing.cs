namespace Pipeline.Scheduling;

/// <summary>
/// Two walks over the order of runs, each with its own random numbers. After every leg of a fixed amount of work they meet,
/// and both go on from the better sequence; so it does not matter whether they run at the same time.
/// </summary>
internal sealed class Annealing(Ground ground, Keep? keep, int seed, int threads)
{
    private const int Legs = 2;

    // A short sequence is cooled down once, slowly; coming back to the best would only lead to where it was.
    private const int Short = 100;
    private const int Walks = 2;

    /// <summary>Runs timed.</summary>
    public long Work { get; private set; }

    /// <summary>The best sequence found from the given one, or null if its order cannot be timed.</summary>
    /// <param name="start">The runs in their order.</param>
    /// <param name="work">Runs to be timed by each walk.</param>
    /// <param name="tell">Is told each leg's best.</param>
    /// <param name="cancel">Stops it; the best so far is returned.</param>
    public Slot[]? Improve(IReadOnlyList<Slot> start, long work, Action<Slot[]> tell, CancellationToken cancel)
    {
        var isShort = start.Count < Short;
        var walks = Enumerable.Range(0, Walks).Select(w => new Walk(ground, PricingOf(w, isShort), (seed * Walks) + w)).ToArray();
        Slot[]? best = null;
        Price bestPrice = default;
        var from = start;
        var legs = isShort ? 1 : Legs;
        for (var leg = 0; leg < legs && !cancel.IsCancellationRequested; leg++)
        {
            // Each leg cools down from a lower temperature.
            var hot = 0.15 * Math.Pow(0.6, leg) * Heat(start.Count, legs);
            void Leg(int w)
            {
                if (walks[w].StartFrom(from))
                    walks[w].Run(work / legs, hot, 0.01, cancel);
            }

            if (threads > 1)
                Parallel.For(0, Walks, new ParallelOptions { MaxDegreeOfParallelism = threads }, Leg);
            else
            {
                for (var w = 0; w < Walks; w++)
                    Leg(w);
            }

            foreach (var walk in walks.Where(w => w.Best is not null))
            {
                // what two go downhill by otherwise is no help in choosing between them
                var found = isShort ? walk.BestPrice with { Slope = 0 } : walk.BestPrice;
                if (best is not null && !found.IsBetterThan(bestPrice))
                    continue;
                best = walk.Best;
                bestPrice = found;
            }

            if (best is null)
                break;
            from = best;
            tell(best);
        }

        Work = walks.Sum(w => w.Work);
        return best;
    }

    // Of two walks over few runs one looks at the finish rather than at the mean.
    private Pricing PricingOf(int walk, bool isShort) =>
        new(ground, keep, isShort && walk > 0 ? Pricing.LowCompletionWeight : Pricing.UsualCompletionWeight);

    // In a short sequence one move means more, and it has to be hotter; all the more where another leg comes back to the best.
    private static double Heat(int runs, int legs) => legs == 1
        ? Math.Clamp(Math.Pow(120.0 / Math.Max(1, runs), 2), 1, 20)
        : Math.Clamp(Math.Pow(240.0 / runs, 2), 1, 4);
}
