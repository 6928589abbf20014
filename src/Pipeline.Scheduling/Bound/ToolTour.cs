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
        var ways = new Ways(tool, loads);
        var n = loads.Count;
        var another = loads.Min(l => tool.CloseDown[l]) + loads.Min(l => tool.Fill[l]);
        if (n > MostLoads)
            return Math.Max(Entries(ways, n), (sessions - 1) * another);

        // best[set, last, s]: all loads of the set visited in s sessions, ending loaded with the last
        var most = Math.Min(sessions, n);
        var best = new long[1 << n, n, most + 1];
        for (var set = 1; set < 1 << n; set++)
        {
            for (var last = 0; last < n; last++)
            {
                for (var s = 1; s <= most; s++)
                    best[set, last, s] = (set & (1 << last)) == 0 ? Hours.Never : Reach(best, tool.Fill[loads[last]], ways, n, set, last, s);
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
    public static long Entries(Tool tool, IReadOnlyList<int> loads) => Entries(new Ways(tool, loads), loads.Count);

    private static long Entries(Ways ways, int loads)
    {
        long entries = 0;
        for (var j = 0; j < loads; j++)
            entries += Enumerable.Range(0, loads).Where(i => i != j).Select(i => ways.Between(i, j)).Append(ways.FromClean(j)).Min();
        return entries;
    }

    private static long Reach(long[,,] best, long fill, Ways ways, int loads, int set, int last, int s)
    {
        var rest = set & ~(1 << last);
        if (rest == 0)
            return s == 1 ? fill : Hours.Never;
        var least = Hours.Never;
        for (var before = 0; before < loads; before++)
        {
            if ((rest & (1 << before)) == 0)
                continue;
            least = Math.Min(least, best[rest, before, s] + ways.Between(before, last));
            // loads seen before may lie on the way
            if (s > 1)
                least = Math.Min(least, best[rest, before, s - 1] + ways.ToClean(before) + ways.FromClean(last));
        }

        return Math.Min(least, Hours.Never);
    }

    // The cheapest way from each load or clean to each other, over any loads or clean between.
    private sealed class Ways
    {
        private readonly IReadOnlyList<int> loads;
        private readonly int clean;
        private readonly long[,] cost;

        public Ways(Tool tool, IReadOnlyList<int> loads)
        {
            this.loads = loads;
            clean = tool.Loads.Length;
            cost = new long[clean + 1, clean + 1];
            for (var i = 0; i < clean; i++)
            {
                for (var j = 0; j < clean; j++)
                    cost[i, j] = tool.CleanOut[i][j];
                cost[i, clean] = tool.CloseDown[i];
                cost[clean, i] = tool.Fill[i];
            }

            for (var via = 0; via <= clean; via++)
            {
                for (var i = 0; i <= clean; i++)
                {
                    for (var j = 0; j <= clean; j++)
                        cost[i, j] = Math.Min(cost[i, j], cost[i, via] + cost[via, j]);
                }
            }
        }

        public long Between(int from, int to) => cost[loads[from], loads[to]];

        public long ToClean(int from) => cost[loads[from], clean];

        public long FromClean(int to) => cost[clean, loads[to]];
    }
}
