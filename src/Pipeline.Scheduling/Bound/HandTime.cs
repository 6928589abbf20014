using System.Runtime.InteropServices;

namespace Pipeline.Scheduling;

/// <summary>
/// The hands of some workers as two clocks: from what the first reads at a time until what the second reads at a later one is no less than
/// what can be done in between. Where no day is capped both are the clock of those at hand. Of a capped day the second reads what can have been
/// done of it, the first what is done in any case if nothing is left undone that still could be.
/// </summary>
internal sealed class HandTime
{
    private readonly OpenTime uncapped;
    private readonly List<List<Day>> capped = [];

    public HandTime(Net net, IReadOnlyCollection<int> workers)
    {
        uncapped = new OpenTime(net, workers.Where(w => net.MostPerDay[w] == long.MaxValue), once: false);
        foreach (var w in workers.Where(w => net.MostPerDay[w] < long.MaxValue))
        {
            var days = new List<Day>();
            long reading = 0;
            foreach (var day in net.Problem.Workers[w].Open.Days)
            {
                days.Add(new Day(reading, net.MostPerDay[w], [.. day]));
                reading += days[^1].Most(days[^1].Before(long.MaxValue));
            }

            capped.Add(days);
        }
    }

    /// <summary>The reading at a time from which on something can be done.</summary>
    public long From(long time) => uncapped.At(time) + capped.Sum(days => At(days, time)?.From(time) ?? 0);

    /// <summary>The reading at a time by which something must be done.</summary>
    public long By(long time) => uncapped.At(time) + capped.Sum(days => At(days, time)?.By(time) ?? 0);

    private static Day? At(List<Day> days, long time)
    {
        var later = Sorted.FirstLater(CollectionsMarshal.AsSpan(days), time, static day => day.Start);
        return later == 0 ? null : days[later - 1];
    }

    private sealed class Day(long reading, long most, Interval[] open)
    {
        public long Start => open[0].Start;

        public long Most(long ticks) => Math.Min(ticks, most);

        public long Before(long time) => open.Sum(o => Math.Clamp(time, o.Start, o.End) - o.Start);

        public long By(long time) => reading + Most(Before(time));

        public long From(long time)
        {
            var all = Before(long.MaxValue);
            return reading + Most(all) - Most(all - Before(time));
        }
    }
}
