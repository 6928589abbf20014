namespace Pipeline.Scheduling;

/// <summary>
/// The clock of those at hand: it stands still when nobody is, and runs twice as fast when two are.
/// Where no hands are needed at all, it is the ordinary clock.
/// </summary>
internal sealed class OpenTime
{
    private readonly bool always;

    // At each time the clock's reading and, from there on, its speed.
    private readonly List<long> times = [];
    private readonly List<long> readings = [];
    private readonly List<int> speeds = [];

    /// <summary>The clock of some workers; each hour counts once if <paramref name="once"/>, however many are there.</summary>
    public OpenTime(Net net, IEnumerable<int> workers, bool once)
    {
        always = !net.Attended.Contains(true);
        var changes = new SortedDictionary<long, int>();
        foreach (var open in workers.SelectMany(w => net.Open[w]))
        {
            changes[open.Start] = changes.GetValueOrDefault(open.Start) + 1;
            changes[open.End] = changes.GetValueOrDefault(open.End) - 1;
        }

        var present = 0;
        long reading = 0;
        foreach (var (time, change) in changes)
        {
            if (times.Count > 0)
                reading += (time - times[^1]) * speeds[^1];
            present += change;
            times.Add(time);
            readings.Add(reading);
            speeds.Add(once ? Math.Min(present, 1) : present);
        }
    }

    /// <summary>The clock's reading at a time.</summary>
    public long At(long time)
    {
        if (always)
            return time;
        var i = Index(time);
        return i < 0 ? 0 : readings[i] + ((time - times[i]) * speeds[i]);
    }

    /// <summary>Ticks of the clock from one time to another, and how many open stretches begin in between.</summary>
    public (long Ticks, int Intervals) Between(long from, long to)
    {
        if (to <= from)
            return (0, 0);
        if (always)
            return (to - Math.Max(from, 0), 1);
        var intervals = 0;
        for (var i = Math.Max(0, Index(from)); i < times.Count && times[i] < to; i++)
        {
            if (times[i] >= from && speeds[i] > 0 && (i == 0 || speeds[i - 1] == 0))
                intervals++;
        }

        return (At(to) - At(from), intervals);
    }

    private int Index(long time)
    {
        var i = times.BinarySearch(time);
        return i >= 0 ? i : ~i - 1;
    }
}
