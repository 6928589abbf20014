namespace Pipeline.Scheduling;

/// <summary>In how many open intervals a tool must be used at the least.</summary>
internal static class Sessions
{
    /// <summary>
    /// Along every chain of waits the uses of a tool fall into groups, each no longer than the longest open interval;
    /// the chain that needs the most groups counts.
    /// </summary>
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
