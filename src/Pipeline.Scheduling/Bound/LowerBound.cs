namespace Pipeline.Scheduling;

/// <summary>The earliest the whole can be finished, whatever the schedule.</summary>
internal sealed class LowerBound
{
    private readonly Net net;
    private readonly Heads heads;
    private readonly Deadlines deadlines;
    private readonly OpenTime once;
    private readonly List<WorkContent> contents = [];

    public LowerBound(Net net, Components components, Hours hours, Heads heads)
    {
        this.net = net;
        this.heads = heads;
        deadlines = new Deadlines(net, components, hours);
        var everybody = Enumerable.Range(0, net.Problem.Workers.Length).ToArray();
        once = new OpenTime(net, everybody, once: true);
        contents.Add(new WorkContent(net, components, heads.Starts, everybody));
        for (var w = 0; w < everybody.Length && everybody.Length > 1; w++)
            contents.Add(new WorkContent(net, components, heads.Starts, [w]));
        contents.RemoveAll(c => c.IsEmpty);
        Finish = net.Count == 0 ? 0 : Enumerable.Range(0, net.Count).Max(EarliestFinish);
    }

    /// <summary>No schedule finishes before this tick.</summary>
    public long Finish { get; private set; }

    public BoundSource Source { get; private set; } = BoundSource.LongestPath;

    /// <summary>No schedule finishes this activity sooner.</summary>
    public long EarliestFinish(int activity) => heads.Starts[net.Offset[activity + 1] - 1] + net.Duration[activity];

    /// <summary>The latest own start of each unit if all is to be finished by then.</summary>
    public long[] LatestStarts(long finish)
    {
        var latest = new long[net.Offset[^1]];
        deadlines.Fill(finish, latest);
        return latest;
    }

    /// <summary>The latest own start of each unit if all due times are to be met; far away where none is behind it.</summary>
    public long[] LatestStarts(IEnumerable<Due> dues)
    {
        var latest = new long[net.Offset[^1]];
        var by = Enumerable.Repeat(Hours.Never / 2, net.Count).ToArray();
        foreach (var due in dues)
            by[due.Activity] = Math.Min(by[due.Activity], due.By - due.Afterwards);
        deadlines.Fill(by, latest);
        return latest;
    }

    /// <summary>Raises the bound to the earliest finish that cannot be disproved; some schedule finishes at <paramref name="known"/>.</summary>
    public void Sharpen(long known)
    {
        var latest = new long[net.Offset[^1]];
        var low = Finish;
        var high = known;
        while (low < high)
        {
            var middle = low + ((high - low) / 2);
            if (CouldFinish(middle, latest))
                high = middle;
            else
                low = middle + 1;
        }

        if (low <= Finish)
            return;
        Finish = low;
        Source = BoundSource.WorkContent;
    }

    /// <summary>Takes over what the exact solver has proved.</summary>
    public void Prove(long finish)
    {
        if (finish <= Finish)
            return;
        Finish = finish;
        Source = BoundSource.Proof;
    }

    /// <summary>The bound set against a schedule, of which it may be known that its lots so parted allow no better.</summary>
    public Bound Against(Score score, bool isBestAsParted)
    {
        var (gap, intervals) = once.Between(Finish, score.Finish);
        double lateness = 0;
        foreach (var due in net.Problem.Dues)
            lateness += due.WeightPerTick * Math.Max(0, EarliestFinish(due.Activity) + due.Afterwards - due.By);
        return new Bound(Finish, lateness, gap, intervals, once.Between(long.MinValue / 4, score.Finish).Ticks, Source, Finish >= score.Finish || isBestAsParted);
    }

    private bool CouldFinish(long finish, long[] latest)
    {
        deadlines.Fill(finish, latest);
        for (var u = 0; u < latest.Length; u++)
        {
            if (heads.Starts[u] > latest[u])
                return false;
        }

        return contents.All(c => c.Fits(latest));
    }
}
