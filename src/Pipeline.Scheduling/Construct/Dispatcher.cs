namespace Pipeline.Scheduling;

/// <summary>How one dispatch decides.</summary>
/// <param name="Keys">Per activity: smaller comes first.</param>
/// <param name="PartingWorth">A lot is parted to fill a gap if the overhead is at most this share of the work that fits.</param>
internal sealed record Dispatch(double[] Keys, double PartingWorth);

/// <summary>
/// Puts the groups into a timetable one after another, most urgent first, each as early as the gaps allow.
/// Activities that a greatest wait ties together go in as one.
/// </summary>
internal sealed class Dispatcher
{
    private readonly Net net;
    private readonly Components components;
    private readonly TiedLots tied;

    public Dispatcher(Net net, Components components, Heads heads)
    {
        this.net = net;
        this.components = components;
        tied = new TiedLots(net, components, heads);
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
        bool[] isIn = [.. components.Groups.Select(group => !group.Any(a => Placing.IsMissing(table, a)))];
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
            var done = components.IsTied[g] ? PutTied(table, fitting, g) : PutUnits(table, fitting, components.Groups[g][0], dispatch.PartingWorth);
            if (!done)
            {
                Obstacle ??= OpenHoursEnd(table, components.Groups[g][0]);
                return null;
            }

            if (components.Groups[g].Any(a => Placing.IsMissing(table, a)))
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

    /// <summary>Puts in what must start at a given tick; false leaves the obstacle.</summary>
    public bool PutPinned(Timetable table, Fitting fitting)
    {
        // in their order in time: a tool is cleaned out after what was in it before
        foreach (var a in Enumerable.Range(0, net.Count).Where(a => net.PinnedStart[a] is not null).OrderBy(a => net.PinnedStart[a]))
        {
            var pin = net.PinnedStart[a]!.Value;
            var spot = fitting.Earliest(a, 0, net.Units[a], long.MinValue / 4, pin);
            if (spot.Start != pin)
            {
                Obstacle = new Obstacle.PinContradicts(a, null, 0);
                return false;
            }

            table.Put(a, 0, net.Units[a], spot);
            if ((Placing.Broken(table, a, 0, net.Units[a]) ?? Placing.BrokenInto(table, a)) is { } broken)
            {
                Obstacle = new Obstacle.PinContradicts(a, broken.Arc.Wait, broken.By);
                return false;
            }
        }

        return true;
    }

    /// <summary>All units of an activity that no ring ties, parted where it pays; or none of them.</summary>
    public bool PutUnits(Timetable table, Fitting fitting, int a, double partingWorth)
    {
        var first = Placing.NextUnit(table, a);
        var runs = table.Runs.Count;
        while (first < net.Units[a])
        {
            var all = net.Units[a] - first;
            var spot = net.Attended[a] || net.Whole[a] ? default : Spot.None;
            var units = all;
            if (spot.IsNone)
            {
                // by itself: each unit as soon as it is ready
                units = 1;
                var ready = Placing.WorkFrom(table, a, first, 1);
                while (units < all && Placing.WorkFrom(table, a, first + units, 1) == ready)
                    units++;
                spot = fitting.Earliest(a, first, units, ready, net[a].NotBefore);
                if (spot.IsNone && units > 1)
                    spot = fitting.Earliest(a, first, units = 1, ready, net[a].NotBefore);
            }
            else
            {
                spot = fitting.Earliest(a, first, all, Placing.WorkFrom(table, a, first, all), net[a].NotBefore);
                if (!net.Whole[a] && all > 1)
                    (spot, units) = Part(table, fitting, a, first, spot, partingWorth);
            }

            if (!spot.IsNone)
                table.Put(a, first, units, spot);
            var broken = spot.IsNone ? null : Placing.Broken(table, a, first, units);
            if (spot.IsNone || broken is not null)
            {
                Obstacle = broken is { } wait ? new Obstacle.PinContradicts(a, wait.Arc.Wait, wait.By) : OpenHoursEnd(table, a);
                table.TakeOutAfter(runs);
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
        var one = fitting.Earliest(a, first, 1, Placing.WorkFrom(table, a, first, 1), net[a].NotBefore, until);
        if (one.IsNone)
            return (whole, all);
        var overhead = one.CleanOut + net[a].SetUp + net[a].PutAway;
        var room = table.Sittings[one.Worker][one.Sitting].End - one.Start;
        var most = (int)Math.Clamp(net[a].PerUnit == 0 ? all : room / net[a].PerUnit, 1, all - 1);
        for (var units = most; units >= 1; units--)
        {
            var spot = units == 1 ? one : fitting.Earliest(a, first, units, Placing.WorkFrom(table, a, first, units), net[a].NotBefore, until);
            if (spot.IsNone || (spot.Sitting != one.Sitting && units > 1))
                continue;
            var isWorth = whole.IsNone || overhead <= partingWorth * units * net[a].PerUnit;
            return isWorth ? (spot, units) : (whole, all);
        }

        return (whole, all);
    }

    /// <summary>All of a tied group, or as much of it as goes through at once.</summary>
    public bool PutTied(Timetable table, Fitting fitting, int group)
    {
        if (tied.Put(table, fitting, group))
            return true;
        Obstacle = tied.Obstacle ?? Obstacle;
        return false;
    }

    /// <summary>The activity of a group that is taken up first of those with units missing.</summary>
    public int FirstOf(Timetable table, int group) => tied.FirstOf(table, group);

    private Obstacle.OpenHoursEnd OpenHoursEnd(Timetable table, int a)
    {
        var missing = Enumerable.Range(0, net.Count).Where(b => Placing.IsMissing(table, b)).ToList();
        var ticks = missing.Where(b => net.Attended[b]).Sum(b => net[b].SetUp + net[b].PutAway + net.Work(b, net.Units[b] - Placing.NextUnit(table, b)));
        return new Obstacle.OpenHoursEnd(a, ticks, missing.Count);
    }
}
