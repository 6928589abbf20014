using System.Collections.Immutable;

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

    // the unit that a unit's start follows from, or −1
    private readonly int[] source;

    private Heads(Net net, Components components, Hours? hours)
    {
        this.net = net;
        this.components = components;
        this.hours = hours;
        Starts = new long[net.Offset[^1]];
        cause = new int[Starts.Length];
        source = new int[Starts.Length];
        Array.Fill(cause, -1);
        Array.Fill(source, -1);
    }

    /// <summary>Own start of each unit; <see cref="Hours.Never"/> if the open hours end before it.</summary>
    public long[] Starts { get; }

    /// <summary>What makes the waits unkeepable, or null.</summary>
    public Obstacle? Obstacle { get; private set; }

    /// <summary>Computes the heads, with the open hours unless <paramref name="hours"/> is null.</summary>
    public static Heads Of(Net net, Components components, Hours? hours)
    {
        var heads = new Heads(net, components, hours);
        heads.Begin();
        for (var g = 0; g < components.Groups.Length && heads.Obstacle is null; g++)
            heads.Settle(g);
        return heads;
    }

    /// <summary>The rings of waits that no hours could keep, one for each group that has any.</summary>
    public static ImmutableArray<Obstacle.WaitsContradict> Rings(Net net, Components components)
    {
        var heads = new Heads(net, components, hours: null);
        heads.Begin();
        var rings = ImmutableArray.CreateBuilder<Obstacle.WaitsContradict>();
        for (var g = 0; g < components.Groups.Length; g++)
        {
            heads.Settle(g);
            if (heads.Obstacle is Obstacle.WaitsContradict ring)
                rings.Add(ring);
            heads.Obstacle = null;
        }

        return rings.ToImmutable();
    }

    private void Begin()
    {
        for (var a = 0; a < net.Count; a++)
        {
            var earliest = net.PinnedStart[a] ?? net[a].NotBefore;
            var cleanOut = hours?.LeastCleanOut(a) ?? 0;
            for (var k = 0; k < net.Units[a]; k++)
                Starts[net.Offset[a] + k] = earliest + cleanOut + net[a].SetUp + (Math.Max(0, k - net.Done[a]) * net.Step[a]);
        }

        net.FillPast(Starts);
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
                changed |= To(a, 0, net.Offset[arc.From + 1] - 1, arc);
            else
            {
                for (var k = 0; k < net.Units[a]; k++)
                    changed |= To(a, k, net.Offset[arc.From] + k, arc);
            }
        }

        for (var k = net.Done[a]; k < net.Units[a]; k++)
        {
            if (k > 0 && Starts[offset + k] < Starts[offset + k - 1] + net.Step[a])
            {
                Starts[offset + k] = Starts[offset + k - 1] + net.Step[a];
                cause[offset + k] = -1;
                source[offset + k] = offset + k - 1;
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

    private bool To(int a, int unit, int since, Arc arc)
    {
        var offset = net.Offset[a] + unit;
        var from = Starts[since];
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

        if (hours is null && start - (net.LatestPinned(a) + (unit * net.Step[a])) is > 0 and var late)
        {
            Obstacle ??= new Obstacle.PinContradicts(a, arc.Wait, late);
            return false;
        }

        Starts[offset] = start;
        cause[offset] = arc.Wait;
        source[offset] = since;
        return true;
    }

    // Where starts never come to rest, going back from unit to unit comes round: that is the ring, and nothing that hangs on it.
    private Obstacle.WaitsContradict Ring(int[] members)
    {
        var inside = members.SelectMany(a => Enumerable.Range(net.Offset[a], net.Units[a])).ToHashSet();
        var seen = new HashSet<int>();
        foreach (var start in inside)
        {
            var path = new List<int>();
            var unit = start;
            while (inside.Contains(unit) && seen.Add(unit))
            {
                path.Add(unit);
                unit = source[unit];
            }

            if (path.IndexOf(unit) is >= 0 and var first)
                return Ring(path[first..]);
        }

        throw new InvalidOperationException("Waits that never come to rest have no ring.");
    }

    private Obstacle.WaitsContradict Ring(List<int> units)
    {
        var waits = new SortedSet<int>();
        long excess = 0;
        foreach (var unit in units)
        {
            var to = ActivityOf(unit);
            if (cause[unit] < 0)
            {
                excess += net.Step[to];
                continue;
            }

            waits.Add(cause[unit]);
            var from = ActivityOf(source[unit]);
            excess += net.In[to].Where(arc => arc.Wait == cause[unit] && arc.From == from).Max(arc => arc.Lag);
        }

        return new Obstacle.WaitsContradict([.. waits], excess);
    }

    private int ActivityOf(int unit)
    {
        var at = Array.BinarySearch(net.Offset, unit);
        return at >= 0 ? at : ~at - 1;
    }
}
