namespace Pipeline.Scheduling;

/// <summary>Between a timetable and a sequence of runs.</summary>
internal static class InOrder
{
    /// <summary>The runs of a timetable by their start, as far as the waits allow that order.</summary>
    public static List<Slot> Of(Timetable table, Ground ground)
    {
        var runs = table.Runs.Where(r => !r.IsPast).ToArray();
        var slots = runs.Select(r => new Slot { Activity = r.Activity, First = r.First, Units = r.Units, Worker = r.Worker, ToolNumber = -1, Day = -1 }).ToArray();
        var byActivity = Enumerable.Range(0, runs.Length).ToLookup(i => runs[i].Activity);
        var missing = new int[runs.Length];
        var after = new List<int>[runs.Length];
        for (var i = 0; i < runs.Length; i++)
        {
            after[i] = [];
            var others = ground.Forward[runs[i].Activity].Select(arc => arc.To).Append(runs[i].Activity).Distinct();
            foreach (var j in others.SelectMany(b => byActivity[b]))
            {
                if (i == j || !ground.MustPrecede(slots[i], slots[j]))
                    continue;
                after[i].Add(j);
                missing[j]++;
            }
        }

        var ready = new PriorityQueue<int, (long, int, int)>();
        for (var i = 0; i < runs.Length; i++)
        {
            if (missing[i] == 0)
                ready.Enqueue(i, (runs[i].Start, ground.Rank[runs[i].Activity], runs[i].First));
        }

        var order = new List<Slot>(runs.Length);
        while (ready.TryDequeue(out var i, out _))
        {
            order.Add(slots[i]);
            foreach (var j in after[i])
            {
                if (--missing[j] == 0)
                    ready.Enqueue(j, (runs[j].Start, ground.Rank[runs[j].Activity], runs[j].First));
            }
        }

        return order;
    }

    /// <summary>A timetable filled with the runs at their times.</summary>
    public static Timetable ToTimetable(Net net, IEnumerable<Slot> slots)
    {
        var table = new Timetable(net);
        foreach (var slot in slots.OrderBy(s => s.Start).ThenBy(s => s.End))
        {
            var position = slot.ToolNumber < 0 ? -1 : Timetable.Position(table.Uses[net.Tool[slot.Activity]][slot.ToolNumber], slot.Start, slot.End);
            table.Put(slot.Activity, slot.First, slot.Units, new Spot(slot.Worker, slot.Day, slot.ToolNumber, position, slot.Start, slot.CleanOut, slot.WorkStart, slot.End));
        }

        return table;
    }
}
