namespace Pipeline.Scheduling;

/// <summary>The units with which a new run may begin, beside the first that is left to do. A whole lot has no others.</summary>
/// <param name="Firsts">Per activity, in order, the first left to do among them; empty where all is done.</param>
internal sealed record LotParts(int[][] Firsts)
{
    /// <summary>How many pieces there are that are never parted.</summary>
    public int Count => Firsts.Sum(firsts => firsts.Length);

    /// <summary>Lots may be parted anywhere: what is proved holds for every schedule.</summary>
    public static LotParts Anywhere(Net net) => Of(net, (_, _) => true);

    /// <summary>Lots are parted at most where a schedule parts them; what needs no hands is not held together.</summary>
    public static LotParts AsIn(Net net, Schedule schedule)
    {
        var begun = schedule.Runs.Select(r => (r.Activity, r.FirstUnit)).ToHashSet();
        return Of(net, (a, unit) => !net.Attended[a] || begun.Contains((a, unit)));
    }

    private static LotParts Of(Net net, Func<int, int, bool> mayBegin) => new([.. Enumerable.Range(0, net.Count).Select(a =>
        Enumerable.Range(net.Done[a], net.Units[a] - net.Done[a]).Where(unit => unit == net.Done[a] || (!net.Whole[a] && mayBegin(a, unit))).ToArray())]);
}
