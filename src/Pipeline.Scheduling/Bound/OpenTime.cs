namespace Pipeline.Scheduling;

/// <summary>
/// The hours in which anybody is at hand. Where no hands are needed at all, every tick is open.
/// </summary>
internal sealed class OpenTime
{
    private readonly Interval[] open;
    private readonly bool always;

    public OpenTime(Net net)
    {
        always = !net.Attended.Contains(true);
        var merged = new List<Interval>();
        foreach (var next in net.Open.SelectMany(o => o).OrderBy(o => o.Start))
        {
            if (merged.Count > 0 && next.Start < merged[^1].End)
                merged[^1] = new Interval(merged[^1].Start, Math.Max(merged[^1].End, next.End));
            else
                merged.Add(next);
        }

        open = [.. merged];
    }

    /// <summary>Open ticks from one time to another, and how many intervals they lie in.</summary>
    public (long Ticks, int Intervals) Between(long from, long to)
    {
        if (always)
            return from >= to ? (0, 0) : (to - Math.Max(from, 0), 1);
        long ticks = 0;
        var intervals = 0;
        foreach (var o in open)
        {
            var inside = Math.Min(o.End, to) - Math.Max(o.Start, from);
            if (inside <= 0)
                continue;
            ticks += inside;
            intervals++;
        }

        return (ticks, intervals);
    }
}
