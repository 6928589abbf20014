namespace Pipeline.Scheduling;

/// <summary>The fewest attended ticks of filling, cleaning out and closing down that a tool's loads ask for in any order.</summary>
internal static class ToolTour
{
    private const int MostLoads = 12;

    /// <summary>
    /// From clean through every load that is used, in at least so many sessions; the last session's close-down is not counted,
    /// since it may come after everything is finished.
    /// </summary>
    public static long Least(Tool tool, IReadOnlyList<int> loads, int sessions)
    {
        if (loads.Count == 0)
            return 0;
        var cost = Shortest(tool, loads);
        var n = loads.Count;
        var another = loads.Min(l => tool.CloseDown[l]) + loads.Min(l => tool.Fill[l]);
        if (n > MostLoads)
            return Math.Max(Entries(cost, n), (sessions - 1) * another);

        // best[set, last, s]: all loads of the set visited in s sessions, ending loaded with the last
        var most = Math.Min(sessions, n);
        var best = new long[1 << n, n, most + 1];
        for (var set = 1; set < 1 << n; set++)
        {
            for (var last = 0; last < n; last++)
            {
                for (var s = 1; s <= most; s++)
                    best[set, last, s] = (set & (1 << last)) == 0 ? Hours.Never : Reach(best, tool, loads, cost, set, last, s);
            }
        }

        var least = Hours.Never;
        for (var last = 0; last < n; last++)
        {
            for (var s = 1; s <= most; s++)
                least = Math.Min(least, best[(1 << n) - 1, last, s] + (Math.Max(0, sessions - s) * another));
        }

        return least;
    }

    /// <summary>The same where there are several tools alike: every load is entered at least once, from clean or from the nearest.</summary>
    public static long Entries(Tool tool, IReadOnlyList<int> loads) => Entries(Shortest(tool, loads), loads.Count);

    private static long Entries(long[,] cost, int loads)
    {
        long entries = 0;
        for (var j = 0; j < loads; j++)
            entries += Enumerable.Range(0, loads + 1).Where(i => i != j).Min(i => cost[i, j]);
        return entries;
    }

    private static long Reach(long[,,] best, Tool tool, IReadOnlyList<int> loads, long[,] cost, int set, int last, int s)
    {
        var rest = set & ~(1 << last);
        if (rest == 0)
            return s == 1 ? tool.Fill[loads[last]] : Hours.Never;
        var least = Hours.Never;
        for (var before = 0; before < loads.Count; before++)
        {
            if ((rest & (1 << before)) == 0)
                continue;
            least = Math.Min(least, best[rest, before, s] + cost[before, last]);
            if (s > 1)
                least = Math.Min(least, best[rest, before, s - 1] + tool.CloseDown[loads[before]] + tool.Fill[loads[last]]);
        }

        return Math.Min(least, Hours.Never);
    }

    // Cheapest way from each load to each other, over any loads or clean between; the last row is from clean.
    private static long[,] Shortest(Tool tool, IReadOnlyList<int> loads)
    {
        var all = tool.Loads.Length;
        var full = new long[all + 1, all + 1];
        for (var i = 0; i < all; i++)
        {
            for (var j = 0; j < all; j++)
                full[i, j] = tool.CleanOut[i][j];
            full[i, all] = tool.CloseDown[i];
            full[all, i] = tool.Fill[i];
        }

        for (var via = 0; via <= all; via++)
        {
            for (var i = 0; i <= all; i++)
            {
                for (var j = 0; j <= all; j++)
                    full[i, j] = Math.Min(full[i, j], full[i, via] + full[via, j]);
            }
        }

        var cost = new long[loads.Count + 1, loads.Count];
        for (var i = 0; i <= loads.Count; i++)
        {
            for (var j = 0; j < loads.Count; j++)
                cost[i, j] = full[i < loads.Count ? loads[i] : all, loads[j]];
        }

        return cost;
    }
}
