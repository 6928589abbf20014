namespace Pipeline.Scheduling;

/// <summary>Answers, per activity, when a unit's attended work could start or must have started, looking only at open hours.</summary>
internal sealed class Hours
{
    /// <summary>Later than any time that can be reached.</summary>
    public const long Never = long.MaxValue / 4;

    private readonly Net net;
    private readonly int[][] usersOf;
    private readonly long[] leastCleanOut;
    private readonly long[] leastCloseDown;

    public Hours(Net net)
    {
        this.net = net;
        usersOf = [.. net.Problem.Tools.Select(t => new int[t.Loads.Length])];
        for (var a = 0; a < net.Count; a++)
        {
            if (net.Tool[a] >= 0)
                usersOf[net.Tool[a]][net.Load[a]]++;
        }

        leastCleanOut = [.. Enumerable.Range(0, net.Count).Select(CleanOutAtLeast)];
        leastCloseDown = [.. Enumerable.Range(0, net.Count).Select(CloseDownAtLeast)];
    }

    /// <summary>The fewest attended ticks it can take to get the tool ready.</summary>
    public long LeastCleanOut(int activity) => leastCleanOut[activity];

    /// <summary>Attended ticks of the smallest run, with what its tool asks for.</summary>
    public long SmallestRun(int activity) =>
        net.PinnedStart[activity] is null && !net.Whole[activity]
            ? leastCleanOut[activity] + net[activity].SetUp + net.Work(activity, 1) + net[activity].PutAway + leastCloseDown[activity]
            : leastCleanOut[activity] + net[activity].SetUp + net.Work(activity, net.Units[activity] - net.Done[activity]) + net[activity].PutAway + leastCloseDown[activity];

    /// <summary>The earliest time, not before the given one, at which the own work of a unit can start.</summary>
    public long NextStart(int activity, int unit, long from)
    {
        if (!net.Attended[activity])
            return from;
        var (lead, rest) = Around(activity, unit);
        var best = Never;
        foreach (var worker in net.Workers[activity])
        {
            var open = net.Open[worker];
            for (var i = Sorted.FirstLater(open, from + rest - 1, EndOf); i < open.Length && open[i].Start < best; i++)
            {
                var start = Math.Max(from, open[i].Start + lead);
                if (start + rest > open[i].End)
                    continue;
                best = Math.Min(best, start);
                break;
            }
        }

        return best;
    }

    /// <summary>The latest time, not after the given one, at which the own work of a unit can start; −<see cref="Never"/> if none.</summary>
    public long PreviousStart(int activity, int unit, long until)
    {
        if (!net.Attended[activity] || until <= -Never)
            return until;
        var (lead, rest) = Around(activity, unit);
        var best = -Never;
        foreach (var worker in net.Workers[activity])
        {
            var open = net.Open[worker];
            for (var i = Math.Min(open.Length - 1, Sorted.FirstLater(open, until, EndOf)); i >= 0 && open[i].End - rest > best; i--)
            {
                var start = Math.Min(until, open[i].End - rest);
                if (start - lead < open[i].Start)
                    continue;
                best = Math.Max(best, start);
                break;
            }
        }

        return best;
    }

    /// <summary>The most attended ticks in one go of anybody who may do it.</summary>
    public long Longest(int activity) => net.Workers[activity].Select(w => net.MostAtOnce[w]).DefaultIfEmpty(0).Max();

    // Attended ticks that must lie in the same interval before and from the unit's own start.
    private (long Lead, long Tail) Around(int activity, int unit)
    {
        var lead = unit == net.Done[activity] ? leastCleanOut[activity] + net[activity].SetUp : 0;
        var rest = net.Work(activity, 1) + (unit == net.Units[activity] - 1 ? net[activity].PutAway : 0);
        if (!net.Whole[activity] || net[activity].Together)
            return (lead, rest);
        var units = net.Units[activity] - net.Done[activity];
        var before = (unit - net.Done[activity]) * net.Step[activity];
        return (leastCleanOut[activity] + net[activity].SetUp + before, net.Work(activity, units) - before + net[activity].PutAway);
    }

    private static long EndOf(Interval open) => open.End;

    private long CleanOutAtLeast(int activity)
    {
        if (net.Tool[activity] < 0)
            return 0;
        var tool = net.Problem.Tools[net.Tool[activity]];
        var load = net.Load[activity];
        var least = tool.Fill[load];
        for (var from = 0; from < tool.Loads.Length; from++)
        {
            // the load another activity leaves in the tool
            if (usersOf[net.Tool[activity]][from] > (from == load ? 1 : 0) || net.Done[activity] > 0)
                least = Math.Min(least, tool.CleanOut[from][load]);
        }

        return least;
    }

    // What must follow in the same interval: at best another run takes the tool over, which then closes it down.
    private long CloseDownAtLeast(int activity) =>
        net.Tool[activity] < 0 || net.Problem.Workers.Length > 1 ? 0 : net.Problem.Tools[net.Tool[activity]].CloseDown.Min();
}
