namespace Pipeline.Scheduling;

/// <summary>Between a timetable and a sequence of runs.</summary>
internal static class InOrder
{
    /// <summary>The runs of a timetable by their start, as far as the waits allow that order.</summary>
    public static List<Slot> Of(Timetable table, Ground ground)
    {
        var runs = table.Runs.Where(r => !r.IsPast).ToArray();
        return Of([.. runs.Select(r => (Slot.Of(r.Activity, r.First, r.Units, r.Worker, r.Start, r.ToolNumber), r.Start))], ground);
    }

    /// <summary>The runs of a schedule by their start, as far as the waits allow that order.</summary>
    public static List<Slot> Of(Schedule schedule, Ground ground) => Of(
        [.. schedule.Runs.Where(r => r.FirstUnit >= ground.Net.Done[r.Activity]).Select(r => (Slot.Of(r.Activity, r.FirstUnit, r.Units, r.Worker, r.Start, r.ToolNumber), r.Start))], ground);

    /// <summary>Runs by a start that each is wished to have, as far as the waits allow that order.</summary>
    public static List<Slot> Of(IReadOnlyList<(Slot Slot, long Start)> runs, Ground ground)
    {
        Slot[] slots = [.. runs.Select(r => r.Slot)];
        var byActivity = Enumerable.Range(0, slots.Length).ToLookup(i => slots[i].Activity);
        var missing = new int[slots.Length];
        var after = new List<int>[slots.Length];
        for (var i = 0; i < slots.Length; i++)
        {
            after[i] = [];
            var others = ground.Forward[slots[i].Activity].Select(arc => arc.To).Append(slots[i].Activity).Distinct();
            foreach (var j in others.SelectMany(b => byActivity[b]))
            {
                if (i == j || !ground.MustPrecede(slots[i], slots[j]))
                    continue;
                after[i].Add(j);
                missing[j]++;
            }
        }

        var ready = new PriorityQueue<int, (long, int, int)>();
        for (var i = 0; i < slots.Length; i++)
        {
            if (missing[i] == 0)
                ready.Enqueue(i, (runs[i].Start, ground.Rank[slots[i].Activity], slots[i].First));
        }

        var order = new List<Slot>(slots.Length);
        while (ready.TryDequeue(out var i, out _))
        {
            order.Add(slots[i]);
            foreach (var j in after[i])
            {
                if (--missing[j] == 0)
                    ready.Enqueue(j, (runs[j].Start, ground.Rank[slots[j].Activity], slots[j].First));
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
