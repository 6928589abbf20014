namespace Pipeline.Scheduling;

/// <summary>How one dispatch decides.</summary>
/// <param name="Keys">Per activity: smaller comes first.</param>
/// <param name="PartingWorth">A lot is parted to fill a gap if the overhead is at most this share of the work that fits.</param>
internal sealed record Dispatch(double[] Keys, double PartingWorth);

/// <summary>
/// Puts the groups into a timetable one after another, most urgent first, each as early as the gaps allow.
/// Activities that a greatest wait ties together go in as one, and move right together until the waits are kept.
/// </summary>
internal sealed class Dispatcher
{
    private const int MostRounds = 400;

    private readonly Net net;
    private readonly Components components;
    private readonly int[] lotOf;
    private readonly int[][] order;

    public Dispatcher(Net net, Components components, Heads heads)
    {
        this.net = net;
        this.components = components;
        order = [.. components.Groups.Select(g => g.OrderBy(a => heads.Starts[net.Offset[a + 1] - 1]).ThenBy(a => a).ToArray())];
        lotOf = new int[components.Groups.Length];
        var table = new Timetable(net);
        for (var g = 0; g < lotOf.Length; g++)
            lotOf[g] = components.IsTied[g] ? TransferLot(table, g) : 0;
    }

    /// <summary>What stood in the way of the last dispatch, or null.</summary>
    public Obstacle? Obstacle { get; private set; }

    /// <summary>Fills a timetable, or returns null and leaves the obstacle.</summary>
    public Timetable? Fill(Dispatch dispatch)
    {
        Obstacle = null;
        var table = new Timetable(net);
        return PutPinned(table, new Fitting(table)) ? Complete(table, dispatch) : null;
    }

    /// <summary>Puts what is not in a timetable yet into its gaps.</summary>
    public Timetable? Complete(Timetable table, Dispatch dispatch)
    {
        Obstacle = null;
        var fitting = new Fitting(table);
        var missing = new int[components.Groups.Length];
        var keys = new double[components.Groups.Length];
        bool[] isIn = [.. components.Groups.Select(group => !group.Any(a => IsMissing(table, a)))];
        for (var g = 0; g < missing.Length; g++)
        {
            keys[g] = components.Groups[g].Min(a => dispatch.Keys[a]);
            foreach (var a in components.Groups[g])
                missing[g] += net.In[a].Count(arc => components.Of[arc.From] != g && !isIn[components.Of[arc.From]]);
        }

        var ready = new PriorityQueue<int, (double, int)>();
        for (var g = 0; g < missing.Length; g++)
        {
            if (missing[g] == 0 && !isIn[g])
                ready.Enqueue(g, (keys[g], g));
        }

        while (ready.TryDequeue(out var g, out _))
        {
            var done = components.IsTied[g] ? PutLot(table, fitting, g) : PutUnits(table, fitting, components.Groups[g][0], dispatch.PartingWorth);
            if (!done)
            {
                Obstacle ??= OpenHoursEnd(table, components.Groups[g][0]);
                return null;
            }

            if (components.Groups[g].Any(a => IsMissing(table, a)))
            {
                ready.Enqueue(g, (keys[g], g));
                continue;
            }

            foreach (var a in components.Groups[g])
            {
                foreach (var arc in net.Out[a])
                {
                    var to = components.Of[arc.To];
                    if (to != g && --missing[to] == 0)
                        ready.Enqueue(to, (keys[to], to));
                }
            }
        }

        return table;
    }

    /// <summary>The activity of a group that is taken up first of those with units missing.</summary>
    public int FirstOf(Timetable table, int group)
    {
        foreach (var a in order[group])
        {
            if (IsMissing(table, a))
                return a;
        }

        throw new ArgumentException("Nothing of the group is missing.", nameof(group));
    }

    /// <summary>Puts in what must start at a given tick; false leaves the obstacle.</summary>
    public bool PutPinned(Timetable table, Fitting fitting)
    {
        for (var a = 0; a < net.Count; a++)
        {
            if (net.PinnedStart[a] is not { } pin)
                continue;
            var spot = PinnedSpot(fitting, a, pin);
            if (spot.Start != pin)
            {
                Obstacle = new Obstacle.PinContradicts(a, null, 0);
                return false;
            }

            table.Put(a, 0, net.Units[a], spot);
            if (Broken(table, a, 0, net.Units[a]) is { } broken)
            {
                Obstacle = new Obstacle.PinContradicts(a, broken.Arc.Wait, broken.By);
                return false;
            }
        }

        return true;
    }

    private Spot PinnedSpot(Fitting fitting, int a, long pin)
    {
        var spot = fitting.Earliest(a, net.Units[a], long.MinValue / 4, pin);
        return spot;
    }

    /// <summary>All units of an activity that no ring ties, parted where it pays.</summary>
    public bool PutUnits(Timetable table, Fitting fitting, int a, double partingWorth)
    {
        var first = NextUnit(table, a);
        while (first < net.Units[a])
        {
            var all = net.Units[a] - first;
            var spot = net.Attended[a] || net.Whole[a] ? default : Spot.None;
            var units = all;
            if (spot.IsNone)
            {
                // by itself: each unit as soon as it is ready
                units = 1;
                var ready = WorkFrom(table, a, first, 1);
                while (units < all && WorkFrom(table, a, first + units, 1) == ready)
                    units++;
                spot = fitting.Earliest(a, units, ready, net[a].NotBefore);
                if (spot.IsNone && units > 1)
                    spot = fitting.Earliest(a, units = 1, ready, net[a].NotBefore);
            }
            else
            {
                spot = fitting.Earliest(a, all, WorkFrom(table, a, first, all), net[a].NotBefore);
                if (!net.Whole[a] && all > 1)
                    (spot, units) = Part(table, fitting, a, first, spot, partingWorth);
            }

            if (spot.IsNone)
                return false;
            table.Put(a, first, units, spot);
            if (Broken(table, a, first, units) is { } broken)
            {
                Obstacle = new Obstacle.PinContradicts(a, broken.Arc.Wait, broken.By);
                return false;
            }

            first += units;
        }

        return true;
    }

    // Fewer units sooner, if that is worth the overhead of another run.
    private (Spot Spot, int Units) Part(Timetable table, Fitting fitting, int a, int first, Spot whole, double partingWorth)
    {
        var all = net.Units[a] - first;
        var until = whole.IsNone ? long.MaxValue : whole.WorkStart;
        var one = fitting.Earliest(a, 1, WorkFrom(table, a, first, 1), net[a].NotBefore, until);
        if (one.IsNone)
            return (whole, all);
        var overhead = one.CleanOut + net[a].SetUp + net[a].PutAway;
        var room = table.Days[one.Worker][one.Day].End - one.Start;
        var most = (int)Math.Clamp(net[a].PerUnit == 0 ? all : room / net[a].PerUnit, 1, all - 1);
        for (var units = most; units >= 1; units--)
        {
            var spot = units == 1 ? one : fitting.Earliest(a, units, WorkFrom(table, a, first, units), net[a].NotBefore, until);
            if (spot.IsNone || (spot.Day != one.Day && units > 1))
                continue;
            var isWorth = whole.IsNone || overhead <= partingWorth * units * net[a].PerUnit;
            return isWorth ? (spot, units) : (whole, all);
        }

        return (whole, all);
    }

    /// <summary>The next transfer lot of a tied group.</summary>
    public bool PutLot(Timetable table, Fitting fitting, int group)
    {
        var units = lotOf[group];
        while (units > 0 && !TryLot(table, fitting, group, units))
            units = units > 1 && IsPartable(group) ? units / 2 : 0;
        return units > 0;
    }

    private bool TryLot(Timetable table, Fitting fitting, int group, int units)
    {
        var members = order[group];
        var from = new long[members.Length];
        Array.Fill(from, long.MinValue / 4);
        var firsts = members.Select(a => NextUnit(table, a)).ToArray();
        var put = new List<int>(); // positions in members, in order of putting in
        var position = 0;
        var rounds = MostRounds + (10 * members.Length);
        while (position < members.Length)
        {
            var a = members[position];
            var count = Math.Min(units, net.Units[a] - firsts[position]);
            if (count <= 0 || net.PinnedStart[a] is not null)
            {
                position++;
                continue;
            }

            var spot = fitting.Earliest(a, count, Math.Max(from[position], WorkFrom(table, a, firsts[position], count)), net[a].NotBefore);
            if (!spot.IsNone)
            {
                table.Put(a, firsts[position], count, spot);
                put.Add(position);
                if (Broken(table, a, firsts[position], count) is not { } broken)
                {
                    position++;
                    continue;
                }

                var back = put.FindIndex(p => members[p] == broken.Arc.To);
                if (back >= 0 && --rounds > 0)
                {
                    position = put[back];
                    var start = table.Starts[net.Offset[members[position]] + firsts[position]];
                    from[position] = start + broken.By;
                    TakeOut(table, put, put.Count - back);
                    continue;
                }

                Obstacle = new Obstacle.GreatestWaitTooShort(broken.Arc.Wait);
            }

            TakeOut(table, put, put.Count);
            return false;
        }

        Obstacle = null;
        return true;
    }

    private static void TakeOut(Timetable table, List<int> put, int count)
    {
        for (; count > 0; count--)
        {
            table.TakeOutLast();
            put.RemoveAt(put.Count - 1);
        }
    }

    // The largest lot that can go through a tied group at all, tried in a timetable that is left as empty as it was.
    private int TransferLot(Timetable table, int group)
    {
        var all = components.Groups[group].Max(a => net.Units[a] - net.Done[a]);
        if (all <= 1 || !IsPartable(group))
            return Math.Max(all, 1);
        var fitting = new Fitting(table);
        var past = table.Runs.Count;
        var units = all;
        while (units > 1)
        {
            if (TryLot(table, fitting, group, units))
                break;
            units -= Math.Max(1, units / 8);
        }

        while (table.Runs.Count > past)
            table.TakeOutLast();
        // as even as can be
        var lots = (all + units - 1) / units;
        return (all + lots - 1) / lots;
    }

    private bool IsPartable(int group) => components.Groups[group].All(a =>
        !net.Whole[a] && net.In[a].All(arc => !arc.Whole || components.Of[arc.From] != group));

    /// <summary>The earliest own start of the first of some units, so that they can follow each other without a break.</summary>
    public long WorkFrom(Timetable table, int a, int first, int units)
    {
        var from = long.MinValue / 4;
        if (first > 0)
            from = Math.Max(from, table.Starts[net.Offset[a] + first - 1] + net.Step[a]);
        foreach (var arc in net.In[a])
        {
            if (arc.Whole)
            {
                var last = table.Starts[net.Offset[arc.From + 1] - 1];
                if (first == 0 && last != Timetable.Unset)
                    from = Math.Max(from, last + arc.Lag);
                continue;
            }

            for (var k = 0; k < units; k++)
            {
                var start = table.Starts[net.Offset[arc.From] + first + k];
                if (start != Timetable.Unset)
                    from = Math.Max(from, start + arc.Lag - (k * net.Step[a]));
            }
        }

        return from;
    }

    /// <summary>An arc from the given units to something already in the timetable that is not kept.</summary>
    public (Arc Arc, long By)? Broken(Timetable table, int a, int first, int units)
    {
        (Arc, long)? worst = null;
        long most = 0;
        foreach (var arc in net.Out[a])
        {
            if (arc.Whole)
            {
                if (first + units == net.Units[a])
                    Look(arc, table.Starts[net.Offset[a + 1] - 1], 0);
                continue;
            }

            for (var k = first; k < first + units; k++)
                Look(arc, table.Starts[net.Offset[a] + k], k);
        }

        return worst;

        void Look(Arc arc, long from, int toUnit)
        {
            var to = table.Starts[net.Offset[arc.To] + toUnit];
            if (to == Timetable.Unset || to >= from + arc.Lag || from + arc.Lag - to <= most)
                return;
            most = from + arc.Lag - to;
            worst = (arc, most);
        }
    }

    /// <summary>The first unit that is not in the timetable.</summary>
    public int NextUnit(Timetable table, int a)
    {
        var k = net.Done[a];
        while (k < net.Units[a] && table.Starts[net.Offset[a] + k] != Timetable.Unset)
            k++;
        return k;
    }

    /// <summary>Whether some units are not in the timetable.</summary>
    public bool IsMissing(Timetable table, int a) => table.Starts[net.Offset[a + 1] - 1] == Timetable.Unset;

    private Obstacle.OpenHoursEnd OpenHoursEnd(Timetable table, int a)
    {
        var missing = Enumerable.Range(0, net.Count).Where(b => IsMissing(table, b)).ToList();
        var ticks = missing.Where(b => net.Attended[b]).Sum(b => net[b].SetUp + net[b].PutAway + net.Work(b, net.Units[b] - NextUnit(table, b)));
        return new Obstacle.OpenHoursEnd(a, ticks, missing.Count);
    }
}
