namespace Pipeline.Scheduling;

/// <summary>
/// What it costs that a run is later than the due times behind it allow. Lateness alone moves in whole days, and only when the
/// last run does; this falls with every run on the way that comes forward, so that several moves can be made one by one.
/// </summary>
internal sealed class Haste
{
    // In open ticks per open tick beyond the deadline, for the weightiest due time.
    private const double PerTick = 0.2;

    private readonly double[] latest;
    private readonly double[] weight;

    public Haste(Net net, LowerBound bound, OpenTime clock)
    {
        latest = new double[net.Offset[^1]];
        weight = new double[latest.Length];
        if (net.Problem.Dues.IsEmpty)
            return;
        var starts = bound.LatestStarts(net.Problem.Dues);
        var byActivity = Weights(net);
        for (var a = 0; a < net.Count; a++)
        {
            for (var u = net.Offset[a]; u < net.Offset[a + 1]; u++)
            {
                latest[u] = clock.At(starts[u] + net[a].PerUnit);
                weight[u] = byActivity[a] * PerTick;
            }
        }
    }

    /// <summary>The cost if the hands leave a unit at this reading of the clock.</summary>
    public double Of(int unit, long reading) => weight[unit] > 0 && reading > latest[unit] ? weight[unit] * (reading - latest[unit]) : 0;

    // The greatest weight of all due times that an activity leads to; 1 for the weightiest.
    private static double[] Weights(Net net)
    {
        var weights = new double[net.Count];
        var most = net.Problem.Dues.Max(d => d.WeightPerTick);
        var open = new Queue<int>();
        foreach (var due in net.Problem.Dues)
        {
            weights[due.Activity] = Math.Max(weights[due.Activity], due.IsHard || most <= 0 ? 1 : due.WeightPerTick / most);
            open.Enqueue(due.Activity);
        }

        while (open.TryDequeue(out var a))
        {
            foreach (var arc in net.In[a])
            {
                if (weights[arc.From] >= weights[a])
                    continue;
                weights[arc.From] = weights[a];
                open.Enqueue(arc.From);
            }
        }

        return weights;
    }
}
