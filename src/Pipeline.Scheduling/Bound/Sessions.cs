namespace Pipeline.Scheduling;

/// <summary>In how many sessions a tool must be used at the least: from clean until it is closed down.</summary>
internal static class Sessions
{
    /// <summary>
    /// The longest a session can last. Whoever takes a tool over while the one before is still at hand goes on with the session,
    /// so open intervals of several workers that overlap count as one.
    /// </summary>
    public static long Longest(Net net, IEnumerable<int> workers)
    {
        long longest = 1;
        var (start, end) = (0L, long.MinValue);
        foreach (var open in workers.SelectMany(w => net.Open[w]).OrderBy(o => o.Start))
        {
            if (open.Start >= end)
                (start, end) = (open.Start, open.End);
            end = Math.Max(end, open.End);
            longest = Math.Max(longest, end - start);
        }

        return longest;
    }

    /// <summary>
    /// Along every chain of waits the uses of a tool fall into groups, each no longer than a session can be;
    /// the chain that needs the most groups counts.
    /// </summary>
    /// <param name="net">The problem.</param>
    /// <param name="components">Its groups.</param>
    /// <param name="tool">A tool of which there is one.</param>
    /// <param name="longest">The longest a session can be, without closing down.</param>
    public static int Least(Net net, Components components, int tool, long longest)
    {
        // Per activity, the chain that is furthest: groups so far, and ticks from the first start of the last group.
        var groups = new int[net.Count];
        var span = new long[net.Count];
        var most = 1;
        foreach (var group in components.Groups)
        {
            // inside a tied group the order of activities is not known; each is taken by itself
            foreach (var a in group)
            {
                foreach (var arc in net.In[a].Where(arc => components.Of[arc.From] != components.Of[a] && arc.Lag >= 0))
                {
                    // from the first unit's start to the first unit's start
                    var lag = arc.Lag + (arc.Whole ? (net.Units[arc.From] - 1) * net.Step[arc.From] : 0);
                    if ((groups[arc.From], span[arc.From] + lag).CompareTo((groups[a], span[a])) > 0)
                        (groups[a], span[a]) = (groups[arc.From], span[arc.From] + lag);
                }

                if (net.Tool[a] == tool && (groups[a] == 0 || span[a] + net.Work(a, 1) > longest))
                    (groups[a], span[a]) = (groups[a] + 1, 0);
                most = Math.Max(most, groups[a]);
            }
        }

        return most;
    }
}
