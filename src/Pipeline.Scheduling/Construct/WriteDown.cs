using System.Collections.Immutable;

namespace Pipeline.Scheduling;

/// <summary>From a filled timetable to a schedule.</summary>
internal static class WriteDown
{
    public static Schedule Of(Timetable table)
    {
        var net = table.Net;
        var runs = ImmutableArray.CreateBuilder<Run>(table.Runs.Count);
        for (var a = 0; a < net.Count; a++)
            runs.AddRange(net[a].Past);
        foreach (var run in table.Runs.Where(r => !r.IsPast))
        {
            var activity = net[run.Activity];
            runs.Add(new Run(
                run.Activity,
                run.First,
                run.Units,
                run.Worker,
                run.ToolNumber,
                run.Start,
                run.CleanOut,
                activity.SetUp,
                net.Work(run.Activity, run.Units),
                activity.PutAway));
        }

        runs.Sort((x, y) => x.Start != y.Start ? x.Start.CompareTo(y.Start)
            : x.Activity != y.Activity ? x.Activity.CompareTo(y.Activity) : x.FirstUnit.CompareTo(y.FirstUnit));
        return new Schedule(runs.ToImmutable(), CloseDowns(table));
    }

    // In the first gap after the tool was put down, while something dries, or after the last work of the interval.
    private static ImmutableArray<CloseDown> CloseDowns(Timetable table)
    {
        var closes = ImmutableArray.CreateBuilder<CloseDown>();
        var last = new List<(Placed Use, int Tool, int Number)>();
        for (var t = 0; t < table.Uses.Length; t++)
        {
            for (var n = 0; n < table.Uses[t].Length; n++)
            {
                var uses = table.Uses[t][n];
                for (var i = 0; i < uses.Count; i++)
                {
                    if (table.HasToClose(uses[i], i + 1 < uses.Count ? uses[i + 1].Start : long.MaxValue) && table.CloseDown(uses[i].Activity) > 0)
                        last.Add((uses[i], t, n));
                }
            }
        }

        foreach (var (use, tool, number) in last.OrderBy(l => l.Use.End).ThenBy(l => l.Tool).ThenBy(l => l.Number))
        {
            var sitting = table.Sittings[use.Worker][use.Sitting];
            var ticks = table.CloseDown(use.Activity);
            var busy = sitting.Blocks.Select(b => (b.Start, b.End)).Concat(closes.Where(c => c.Worker == use.Worker).Select(c => (c.Start, c.Start + c.Ticks)));
            var start = FirstGap(busy, use.End, ticks);
            closes.Add(new CloseDown(tool, number, table.Net.Load[use.Activity], use.Worker, start, ticks));
        }

        closes.Sort((x, y) => x.Start.CompareTo(y.Start));
        return closes.ToImmutable();
    }

    private static long FirstGap(IEnumerable<(long Start, long End)> busy, long from, long ticks)
    {
        foreach (var (start, end) in busy.Where(b => b.End > from).Order())
        {
            if (start - from >= ticks)
                break;
            from = Math.Max(from, end);
        }

        return from;
    }
}
