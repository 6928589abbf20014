namespace Pipeline.Scheduling;

/// <summary>What can be said of the units of an activity that are, or could be, in a timetable.</summary>
internal static class Placing
{
    /// <summary>The earliest own start of the first of some units, so that they can follow each other without a break.</summary>
    public static long WorkFrom(Timetable table, int a, int first, int units) => WorkFrom(table.Net, table.Starts, a, first, units);

    /// <summary>The same, given the own start of every unit; <see cref="Timetable.Unset"/> where it has none.</summary>
    public static long WorkFrom(Net net, long[] starts, int a, int first, int units)
    {
        var from = long.MinValue / 4;
        if (first > 0)
            from = Math.Max(from, starts[net.Offset[a] + first - 1] + net.Step[a]);
        foreach (var arc in net.In[a])
        {
            if (arc.Whole)
            {
                var last = starts[net.Offset[arc.From + 1] - 1];
                if (first == 0 && last != Timetable.Unset)
                    from = Math.Max(from, last + arc.Lag);
                continue;
            }

            for (var k = 0; k < units; k++)
            {
                var start = starts[net.Offset[arc.From] + first + k];
                if (start != Timetable.Unset)
                    from = Math.Max(from, start + arc.Lag - (k * net.Step[a]));
            }
        }

        return from;
    }

    /// <summary>An arc from the given units to something already in the timetable that is not kept.</summary>
    public static (Arc Arc, long By, int Unit)? Broken(Timetable table, int a, int first, int units)
    {
        (Arc, long, int)? worst = null;
        long most = 0;
        foreach (var arc in table.Net.Out[a])
        {
            if (arc.Whole)
            {
                if (first + units == table.Net.Units[a])
                    Look(arc, table.Starts[table.Net.Offset[a + 1] - 1], 0);
                continue;
            }

            for (var k = first; k < first + units; k++)
                Look(arc, table.Starts[table.Net.Offset[a] + k], k);
        }

        return worst;

        void Look(Arc arc, long from, int toUnit)
        {
            var to = table.Starts[table.Net.Offset[arc.To] + toUnit];
            if (to == Timetable.Unset || to >= from + arc.Lag || from + arc.Lag - to <= most)
                return;
            most = from + arc.Lag - to;
            worst = (arc, most, toUnit);
        }
    }

    /// <summary>An arc from something already in the timetable to an activity all of whose units are in it that is not kept.</summary>
    public static (Arc Arc, long By, int Unit)? BrokenInto(Timetable table, int a)
    {
        (Arc, long, int)? worst = null;
        long most = 0;
        foreach (var arc in table.Net.In[a])
        {
            for (var k = 0; k < (arc.Whole ? 1 : table.Net.Units[a]); k++)
            {
                var from = table.Starts[arc.Whole ? table.Net.Offset[arc.From + 1] - 1 : table.Net.Offset[arc.From] + k];
                var by = from == Timetable.Unset ? 0 : from + arc.Lag - table.Starts[table.Net.Offset[a] + k];
                if (by <= most)
                    continue;
                most = by;
                worst = (arc, by, k);
            }
        }

        return worst;
    }

    /// <summary>Whether everything in the timetable would still keep its waits if all units of an activity were so much later.</summary>
    public static bool CouldShift(Timetable table, int a, long by)
    {
        var starts = table.Starts.AsSpan(table.Net.Offset[a], table.Net.Units[a]);
        foreach (ref var start in starts)
            start += by;
        var isKept = Broken(table, a, 0, table.Net.Units[a]) is null && BrokenInto(table, a) is null;
        foreach (ref var start in starts)
            start -= by;
        return isKept;
    }

    /// <summary>Puts some units in, unless there is no spot or a wait would be broken.</summary>
    public static bool TryPut(Timetable table, int a, int first, int units, Spot spot)
    {
        if (spot.IsNone)
            return false;
        table.Put(a, first, units, spot);
        if (Broken(table, a, first, units) is null)
            return true;
        table.TakeOutLast();
        return false;
    }

    /// <summary>Whether all that some units follow is in the timetable.</summary>
    public static bool IsReady(Timetable table, int a, int first, int units)
    {
        foreach (var arc in table.Net.In[a])
        {
            if (arc.IsGreatest)
                continue;
            var offset = table.Net.Offset[arc.From];
            var last = arc.Whole ? table.Net.Offset[arc.From + 1] - 1 : offset + first + units - 1;
            for (var u = arc.Whole ? last : offset + first; u <= last; u++)
            {
                if (table.Starts[u] == Timetable.Unset)
                    return false;
            }
        }

        return true;
    }

    /// <summary>The first unit that is not in the timetable.</summary>
    public static int NextUnit(Timetable table, int a)
    {
        var k = table.Net.Done[a];
        while (k < table.Net.Units[a] && table.Starts[table.Net.Offset[a] + k] != Timetable.Unset)
            k++;
        return k;
    }

    /// <summary>Whether some units are not in the timetable.</summary>
    public static bool IsMissing(Timetable table, int a) => table.Starts[table.Net.Offset[a + 1] - 1] == Timetable.Unset;
}
