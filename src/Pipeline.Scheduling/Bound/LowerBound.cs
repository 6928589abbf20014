namespace Pipeline.Scheduling;

/// <summary>The earliest the whole can be finished, whatever the schedule.</summary>
internal sealed class LowerBound
{
    private readonly Net net;
    private readonly Heads heads;
    private readonly OpenTime open;

    public LowerBound(Net net, Components components, Hours hours, Heads heads)
    {
        _ = components;
        _ = hours;
        this.net = net;
        this.heads = heads;
        open = new OpenTime(net);
        for (var a = 0; a < net.Count; a++)
            Finish = Math.Max(Finish, EarliestFinish(a));
        Source = BoundSource.LongestPath;
    }

    public long Finish { get; private set; }

    public BoundSource Source { get; private set; }

    /// <summary>No schedule finishes this activity sooner.</summary>
    public long EarliestFinish(int activity) => heads.Starts[net.Offset[activity + 1] - 1] + net.Duration[activity];

    /// <summary>Per activity: the longest way from its start to the end of everything.</summary>
    public double[] Tails()
    {
        var tails = new double[net.Count];
        var seen = new bool[net.Count];
        var order = Enumerable.Range(0, net.Count).OrderByDescending(a => heads.Starts[net.Offset[a]]).ToArray();
        foreach (var a in order)
        {
            tails[a] = Math.Max(tails[a], net.Duration[a]);
            seen[a] = true;
            foreach (var arc in net.In[a].Where(arc => !arc.IsGreatest))
                tails[arc.From] = Math.Max(tails[arc.From], tails[a] + arc.Lag);
        }

        return tails;
    }

    /// <summary>The bound set against a schedule.</summary>
    public Bound Against(Score score)
    {
        var (gap, intervals) = open.Between(Finish, score.Finish);
        double lateness = 0;
        foreach (var due in net.Problem.Dues)
            lateness += due.WeightPerTick * Math.Max(0, EarliestFinish(due.Activity) + due.Afterwards - due.By);
        return new Bound(Finish, lateness, gap, intervals, open.Between(long.MinValue, score.Finish).Ticks, Source);
    }
}
