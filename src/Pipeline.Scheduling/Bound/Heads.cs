namespace Pipeline.Scheduling;

/// <summary>
/// The earliest own start of every unit: the longest path through the waits, the order of units and, if asked for,
/// the open hours. A lower bound for every schedule.
/// </summary>
internal sealed class Heads
{
    private readonly Net net;
    private readonly Components components;
    private readonly Hours? hours;
    private readonly int[] cause;

    private Heads(Net net, Components components, Hours? hours)
    {
        this.net = net;
        this.components = components;
        this.hours = hours;
        Starts = new long[net.Offset[^1]];
        cause = new int[Starts.Length];
        Array.Fill(cause, -1);
    }

    /// <summary>Own start of each unit; <see cref="Hours.Never"/> if the open hours end before it.</summary>
    public long[] Starts { get; }

    /// <summary>What makes the waits unkeepable, or null.</summary>
    public Obstacle? Obstacle { get; private set; }

    /// <summary>Computes the heads, with the open hours unless <paramref name="hours"/> is null.</summary>
    public static Heads Of(Net net, Components components, Hours? hours)
    {
        var heads = new Heads(net, components, hours);
        for (var a = 0; a < net.Count; a++)
        {
            var earliest = net.PinnedStart[a] ?? net[a].NotBefore;
            var cleanOut = hours?.LeastCleanOut(a) ?? 0;
            for (var k = 0; k < net.Units[a]; k++)
                heads.Starts[net.Offset[a] + k] = earliest + cleanOut + net[a].SetUp + (Math.Max(0, k - net.Done[a]) * net.Step[a]);
        }

        net.FillPast(heads.Starts);
        for (var g = 0; g < components.Groups.Length && heads.Obstacle is null; g++)
            heads.Settle(g);
        return heads;
    }

    private void Settle(int group)
    {
        var members = components.Groups[group];
        foreach (var a in members)
            Raise(a, group, inside: false);
        if (!components.IsTied[group])
            return;
        // Without hours, more rounds than units mean a ring; with hours the starts climb until they fit or the hours end.
        var rounds = hours is null ? members.Sum(a => net.Units[a]) + 1 : 2000;
        for (var round = 0; round <= rounds; round++)
        {
            var changed = false;
            foreach (var a in members)
                changed |= Raise(a, group, inside: true);
            if (!changed || Obstacle is not null)
                return;
        }

        if (hours is null)
            Obstacle = Ring(members);
    }

    // Raises one activity's units to what arcs from outside or inside its group ask for.
    private bool Raise(int a, int group, bool inside)
    {
        var changed = false;
        var offset = net.Offset[a];
        foreach (var arc in net.In[a])
        {
            if (components.Of[arc.From] == group != inside)
                continue;
            if (arc.Whole)
                changed |= To(a, 0, At(arc.From, net.Units[arc.From] - 1), arc);
            else
            {
                for (var k = 0; k < net.Units[a]; k++)
                    changed |= To(a, k, At(arc.From, k), arc);
            }
        }

        for (var k = net.Done[a]; k < net.Units[a]; k++)
        {
            if (k > 0 && Starts[offset + k] < Starts[offset + k - 1] + net.Step[a])
            {
                Starts[offset + k] = Starts[offset + k - 1] + net.Step[a];
                cause[offset + k] = -1;
                changed = true;
            }

            if (hours is null || Starts[offset + k] >= Hours.Never)
                continue;
            var open = hours.NextStart(a, k, Starts[offset + k]);
            if (open > Starts[offset + k])
            {
                Starts[offset + k] = open;
                changed = true;
            }
        }

        return changed;
    }

    private bool To(int a, int unit, long from, Arc arc)
    {
        var offset = net.Offset[a] + unit;
        var start = from >= Hours.Never ? Hours.Never : from + arc.Lag;
        if (Starts[offset] >= start)
            return false;
        if (unit < net.Done[a])
        {
            // What is done stays; both done is nobody's fault any more.
            if (unit >= net.Done[arc.From] || (arc.Whole && net.Done[arc.From] < net.Units[arc.From]))
                Obstacle ??= new Obstacle.PinContradicts(arc.From, arc.Wait, start - Starts[offset]);
            return false;
        }

        if (net.PinnedStart[a] is not null && hours is null)
        {
            Obstacle ??= new Obstacle.PinContradicts(a, arc.Wait, start - Starts[offset]);
            return false;
        }

        Starts[offset] = start;
        cause[offset] = arc.Wait;
        return true;
    }

    private long At(int activity, int unit) => Starts[net.Offset[activity] + unit];

    private Obstacle.WaitsContradict Ring(int[] members)
    {
        // The waits that still push are the ring, or hang on it; a wait pushes if it is exactly met.
        var waits = new SortedSet<int>();
        foreach (var a in members)
        {
            for (var k = 0; k < net.Units[a]; k++)
            {
                if (cause[net.Offset[a] + k] >= 0)
                    waits.Add(cause[net.Offset[a] + k]);
            }
        }

        long excess = 0;
        foreach (var a in members)
        {
            foreach (var arc in net.In[a].Where(arc => components.Of[arc.From] == components.Of[a]))
            {
                var from = At(arc.From, arc.Whole ? net.Units[arc.From] - 1 : 0);
                excess = Math.Max(excess, from + arc.Lag - At(a, 0));
            }
        }

        return new Obstacle.WaitsContradict([.. waits], excess);
    }
}
