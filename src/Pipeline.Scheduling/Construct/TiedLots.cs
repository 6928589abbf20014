namespace Pipeline.Scheduling;

/// <summary>
/// Puts activities that a greatest wait ties together into a timetable as one: activity after activity in as few runs as can be,
/// or in transfer lots that each go all the way through. What would have to wait too long comes later until the waits are kept.
/// </summary>
internal sealed class TiedLots
{
    private const int MostRounds = 400;
    private const int MostRoundsAtOnce = 4;

    private readonly Net net;
    private readonly Components components;
    private readonly int[][] order;
    private readonly int[] lotOf;
    private readonly bool[] goesAtOnce;

    public TiedLots(Net net, Components components, Heads heads)
    {
        this.net = net;
        this.components = components;
        order = [.. components.Groups.Select(g => g.OrderBy(a => heads.Starts[net.Offset[a + 1] - 1]).ThenBy(a => a).ToArray())];
        lotOf = new int[components.Groups.Length];
        goesAtOnce = new bool[components.Groups.Length];
        // tried in a timetable that is left as empty as it was
        var table = new Timetable(net);
        var fitting = new Fitting(table);
        var past = table.Runs.Count;
        for (var g = 0; g < lotOf.Length; g++)
        {
            if (!components.IsTied[g])
                continue;
            lotOf[g] = TransferLot(table, fitting, g);
            table.TakeOutAfter(past);
            goesAtOnce[g] = NeedsParting(table, fitting, g) && TryAtOnce(table, fitting, g);
            table.TakeOutAfter(past);
        }
    }

    /// <summary>What stood in the way of the last try, or null.</summary>
    public Obstacle? Obstacle { get; private set; }

    /// <summary>Puts in all that is missing of a group, or the next transfer lot of it.</summary>
    public bool Put(Timetable table, Fitting fitting, int group)
    {
        if (goesAtOnce[group] && TryAtOnce(table, fitting, group))
            return true;
        var units = lotOf[group];
        while (units > 0 && !TryLot(table, fitting, group, units))
            units = units > 1 && IsPartable(group) ? units / 2 : 0;
        return units > 0;
    }

    /// <summary>The activity of a group that is taken up first of those with units missing.</summary>
    public int FirstOf(Timetable table, int group)
    {
        foreach (var a in order[group])
        {
            if (Placing.IsMissing(table, a))
                return a;
        }

        throw new ArgumentException("Nothing of the group is missing.", nameof(group));
    }

    // Lots smaller than all there is; or all there is cannot go in whole runs, though some of it must.
    private bool NeedsParting(Timetable table, Fitting fitting, int group)
    {
        if (components.Groups[group].Any(a => lotOf[group] < net.Units[a] - net.Done[a]))
            return true;
        var past = table.Runs.Count;
        var isWhole = IsPartable(group) || TryLot(table, fitting, group, lotOf[group]);
        table.TakeOutAfter(past);
        return !isWhole;
    }

    private bool TryLot(Timetable table, Fitting fitting, int group, int units)
    {
        var ends = order[group].Select(a => Math.Min(net.Units[a], Placing.NextUnit(table, a) + units)).ToArray();
        return Try(table, fitting, group, ends, MostRounds + (10 * ends.Length), mayPart: false);
    }

    private bool TryAtOnce(Timetable table, Fitting fitting, int group)
    {
        var ends = order[group].Select(a => net.Units[a]).ToArray();
        var rounds = IsPartable(group) ? MostRoundsAtOnce * ends.Length : MostRounds + (10 * ends.Length);
        return Try(table, fitting, group, ends, rounds, mayPart: true);
    }

    // Each activity up to a unit, in one run or in as few as can be.
    private bool Try(Timetable table, Fitting fitting, int group, int[] ends, int rounds, bool mayPart)
    {
        var members = order[group];
        var begun = table.Runs.Count;
        var notBefore = members.Select((_, p) => new long[ends[p]]).ToArray();
        foreach (var times in notBefore)
            Array.Fill(times, long.MinValue / 4);
        var put = new List<int>(); // positions in members, in order of putting in
        for (var position = 0; position < members.Length;)
        {
            var a = members[position];
            var first = Placing.NextUnit(table, a);
            if (first >= ends[position] || net.PinnedStart[a] is not null)
            {
                position++;
                continue;
            }

            var (spot, units) = Spot(table, fitting, a, first, ends[position], notBefore[position], mayPart);
            if (!spot.IsNone)
            {
                table.Put(a, first, units, spot);
                put.Add(position);
                if (Placing.Broken(table, a, first, units) is not { } broken)
                    continue;
                var back = put.FindIndex(p => members[p] == broken.Arc.To);
                if (back >= 0 && --rounds > 0)
                {
                    // the unit that would have to wait too long comes later
                    position = put[back];
                    notBefore[position][broken.Unit] = table.Starts[net.Offset[members[position]] + broken.Unit] + broken.By;
                    table.TakeOutAfter(begun + back);
                    put.RemoveRange(back, put.Count - back);
                    continue;
                }

                Obstacle = new Obstacle.GreatestWaitTooShort(broken.Arc.Wait);
            }

            table.TakeOutAfter(begun);
            return false;
        }

        Obstacle = null;
        return true;
    }

    // The next run: all that is left, or as many units as fit anywhere.
    private (Spot Spot, int Units) Spot(Timetable table, Fitting fitting, int a, int first, int end, long[] notBefore, bool mayPart)
    {
        for (var units = end - first; units >= 1; units--)
        {
            var ready = Placing.WorkFrom(table, a, first, units);
            for (var k = 0; k < units; k++)
                ready = Math.Max(ready, notBefore[first + k] - (k * net.Step[a]));
            var spot = fitting.Earliest(a, first, units, ready, net[a].NotBefore);
            if (!spot.IsNone || !mayPart || net.Whole[a])
                return (spot, units);
        }

        return (Scheduling.Spot.None, 0);
    }

    // The largest lot that can go through a tied group at all.
    private int TransferLot(Timetable table, Fitting fitting, int group)
    {
        var all = components.Groups[group].Max(a => net.Units[a] - net.Done[a]);
        if (all <= 1 || !IsPartable(group))
            return Math.Max(all, 1);
        var units = all;
        while (units > 1)
        {
            if (TryLot(table, fitting, group, units))
                break;
            units -= Math.Max(1, units / 8);
        }

        // as even as can be
        var lots = (all + units - 1) / units;
        return (all + lots - 1) / lots;
    }

    private bool IsPartable(int group) => components.Groups[group].All(a =>
        !net.Whole[a] && net.In[a].All(arc => !arc.Whole || components.Of[arc.From] != group));
}
