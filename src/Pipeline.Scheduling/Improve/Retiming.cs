namespace Pipeline.Scheduling;

/// <summary>
/// Gives the runs of a sequence their times, from a position on, until the schedule falls back into step with what it was.
/// A state is, per worker: free from, open interval, ticks kept for close-downs, attended ticks in the interval;
/// per tool: load, free from, worker who must close it down, end of the interval in which it was used.
/// </summary>
internal sealed class Retiming(Ground ground)
{
    private const int MostHolds = 40;
    private const int Never = int.MaxValue;

    private readonly Net net = ground.Net;
    private readonly int workers = ground.Net.Problem.Workers.Length;
    private readonly long[] now = new long[ground.StateSize];
    private bool[] stale = [];
    private Sequence sequence = null!;
    private int firstStale;
    private int lastStale;

    /// <summary>Slots timed.</summary>
    public long Work { get; private set; }

    /// <summary>Times everything.</summary>
    public bool All(Sequence all)
    {
        for (var p = 0; p < all.Count; p++)
            all.Touch(p);
        ground.FirstState().CopyTo(all.States, 0);
        return From(all, 0, all.Count);
    }

    /// <summary>
    /// Times what a change in the positions from <paramref name="from"/> up to, not including, <paramref name="to"/> has moved.
    /// False if a constraint cannot be kept in this order.
    /// </summary>
    public bool From(Sequence changed, int from, int to)
    {
        sequence = changed;
        if (stale.Length < changed.Slots.Length)
            stale = new bool[changed.Slots.Length];
        firstStale = from;
        lastStale = from - 1;
        for (var p = from; p < to; p++)
            Mark(p);
        if (changed.Places.Length > 0)
            Clear(from);
        var holds = 0;
        var kept = true;
        var size = ground.StateSize;
        for (var p = from; p >= 0 && p < changed.Count; p = NextStale(p))
        {
            Array.Copy(changed.States, p * size, now, 0, size);
            // from here on without jumps, until the state is what it was
            while (true)
            {
                stale[p] = false;
                Touched(p);
                Work++;
                var back = Time(p) ? Held(p) : Never;
                if (back == Never || (back >= 0 && ++holds > MostHolds))
                {
                    kept = false;
                    break;
                }

                if (back >= 0)
                {
                    Mark(p);
                    p = back - 1;
                    firstStale = Math.Min(firstStale, back);
                    Mark(back);
                    if (changed.Places.Length > 0)
                        Clear(back);
                    break;
                }

                p++;
                if (p >= changed.Count)
                    break;
                if (now.AsSpan().SequenceEqual(changed.States.AsSpan(p * size, size)))
                {
                    p--;
                    break;
                }

                changed.Touch(p);
                Array.Copy(now, 0, changed.States, p * size, size);
            }

            if (!kept)
                break;
        }

        for (var p = Math.Max(0, firstStale); p <= lastStale && p < stale.Length; p++)
            stale[p] = false;
        changed.Settle();
        return kept;
    }

    private void Touched(int p)
    {
        sequence.Touch(p);
        ref var slot = ref sequence.Slots[p];
        sequence.Completion -= slot.Completion;
        sequence.Changes -= slot.Changes;
        sequence.Holds -= slot.Holds;
        slot.Completion = 0;
        slot.Changes = 0;
        slot.Holds = 0;
    }

    // Where places can fill up, everything later is timed anew, since it may be in the way.
    private void Clear(int from)
    {
        for (var p = from; p < sequence.Count; p++)
        {
            sequence.Untime(p);
            Mark(p);
        }
    }

    private int NextStale(int p)
    {
        for (p++; p <= lastStale; p++)
        {
            if (stale[p])
                return p;
        }

        return -1;
    }

    private void Mark(int p)
    {
        stale[p] = true;
        firstStale = Math.Min(firstStale, p);
        lastStale = Math.Max(lastStale, p);
    }

    private bool Time(int p)
    {
        ref var slot = ref sequence.Slots[p];
        var a = slot.Activity;
        var workFrom = Math.Max(slot.HeldInTrial == sequence.Trial ? slot.HeldUntil : long.MinValue / 4, Ready(slot, p));
        var startFrom = net.PinnedStart[a] ?? net[a].NotBefore;
        var before = slot.WorkStart;
        if (net.Attended[a] ? !TimeAttended(ref slot, workFrom, startFrom) : !TimeAlone(ref slot, Math.Max(workFrom, startFrom)))
        {
            slot.WorkStart = Timetable.Unset;
            return false;
        }

        if (net.PinnedStart[a] is { } pin && slot.Start != pin)
        {
            slot.WorkStart = Timetable.Unset;
            return false;
        }

        if (sequence.Places.Length > 0)
            sequence.FillPlaces(slot, 1);
        sequence.Write(slot);
        Count(ref slot);
        if (slot.WorkStart != before)
            MarkNeighbours(slot, p);
        return true;
    }

    private void Count(ref Slot slot)
    {
        var a = slot.Activity;
        slot.Finish = slot.WorkStart + ((slot.Units - 1) * net.Step[a]) + net.Duration[a];
        slot.Changes = slot.CleanOut + net[a].SetUp + net[a].PutAway;
        slot.Completion = slot.Worker < 0 ? 0 : ground.ReadingAtOpening[slot.Worker][slot.Day] + slot.End - net.Open[slot.Worker][slot.Day].Start;
        var offset = net.Offset[a] + slot.First;
        for (var k = 0; k < slot.Units; k++)
        {
            if (ground.HoldWeights[offset + k] != 0)
                slot.Holds += ground.HoldWeights[offset + k] * sequence.Starts[offset + k];
        }

        sequence.Completion += slot.Completion;
        sequence.Changes += slot.Changes;
        sequence.Holds += slot.Holds;
    }

    private long Ready(in Slot slot, int p)
    {
        var a = slot.Activity;
        var ready = long.MinValue / 4;
        if (slot.First > 0)
            ready = sequence.Starts[net.Offset[a] + slot.First - 1] + net.Step[a];
        foreach (var arc in net.In[a])
        {
            var isBack = ground.Rank[arc.From] >= ground.Rank[a];
            if (arc.Whole)
            {
                if (slot.First == 0 && (!isBack || IsTimed(net.Offset[arc.From + 1] - 1, p)))
                    ready = Math.Max(ready, sequence.Starts[net.Offset[arc.From + 1] - 1] + arc.Lag);
                continue;
            }

            var from = net.Offset[arc.From] + slot.First;
            for (var k = 0; k < slot.Units; k++)
            {
                if (!isBack || IsTimed(from + k, p))
                    ready = Math.Max(ready, sequence.Starts[from + k] + arc.Lag - (k * net.Step[a]));
            }
        }

        return ready;
    }

    private bool IsTimed(int unit, int p) => sequence.PositionOf[unit] < p;

    // The places have room from a time on; long.MaxValue if they never do.
    private long PlacesFit(in Slot slot, long workStart)
    {
        var uses = net[slot.Activity].Places;
        for (var again = uses.Length > 0; again;)
        {
            again = false;
            foreach (var use in uses)
            {
                var fit = sequence.Places[use.Place].EarliestFit(
                    workStart, slot.Units, net.Step[slot.Activity], net.Duration[slot.Activity] + use.Afterwards, use.PerUnit);
                if (fit == long.MaxValue)
                    return fit;
                again |= fit != workStart && uses.Length > 1;
                workStart = fit;
            }
        }

        return workStart;
    }

    private bool TimeAlone(ref Slot slot, long from)
    {
        var start = PlacesFit(slot, from);
        if (start == long.MaxValue)
            return false;
        slot.Start = slot.WorkStart = slot.End = start;
        slot.Worker = slot.Day = slot.ToolNumber = -1;
        slot.CleanOut = 0;
        return true;
    }

    private bool TimeAttended(ref Slot slot, long workFrom, long startFrom)
    {
        var a = slot.Activity;
        var open = net.Open[slot.Worker];
        var w = slot.Worker * Ground.PerWorker;
        var day = (int)now[w + 1];
        var setUp = net[a].SetUp;
        var rest = net.Work(a, slot.Units) + net[a].PutAway;
        var most = net.Problem.Workers[slot.Worker].MostPerInterval ?? long.MaxValue;
        var free = Math.Max(now[w], startFrom);
        var tool = net.Tool[a] < 0 ? -1 : ChooseTool(a, Math.Max(free, workFrom - setUp));
        // days that end too soon need not be looked at one by one
        if (day < open.Length && open[day].End < Math.Max(free, workFrom))
            day = FirstEnding(open, day, Math.Max(free, workFrom));
        for (; day < open.Length; day++)
        {
            var tail = day == now[w + 1] ? now[w + 2] : 0;
            var used = day == now[w + 1] ? now[w + 3] : 0;
            var start = Math.Max(free, open[day].Start);
            long cleanOut = 0;
            if (tool >= 0)
            {
                start = Math.Max(start, now[tool + 1]);
                var held = now[tool] >= 0 && start < now[tool + 3] ? (int)now[tool] : -1;
                cleanOut = net.CleanOut(net.Tool[a], held, net.Load[a]);
                if (start + cleanOut + setUp < workFrom)
                {
                    start = workFrom - setUp - cleanOut;
                    held = now[tool] >= 0 && start < now[tool + 3] ? (int)now[tool] : -1;
                    cleanOut = net.CleanOut(net.Tool[a], held, net.Load[a]);
                    start = Math.Max(start, workFrom - setUp - cleanOut);
                }

                if (held >= 0 && now[tool + 2] == slot.Worker && now[tool + 3] == open[day].End)
                    tail -= net.Problem.Tools[net.Tool[a]].CloseDown[held];
                tail += net.Problem.Tools[net.Tool[a]].CloseDown[net.Load[a]];
            }
            else
                start = Math.Max(start, workFrom - setUp);

            if (sequence.Places.Length > 0)
            {
                var fit = PlacesFit(slot, start + cleanOut + setUp);
                if (fit == long.MaxValue)
                    return false;
                start = fit - cleanOut - setUp;
                if (tool >= 0 && cleanOut != net.CleanOut(net.Tool[a], now[tool] >= 0 && start < now[tool + 3] ? (int)now[tool] : -1, net.Load[a]))
                    return false;
            }

            var end = start + cleanOut + setUp + rest;
            if (end + tail > open[day].End || start >= open[day].End || used + (end - start) + tail > most)
                continue;
            Take(ref slot, tool, day, start, cleanOut, end, tail, used);
            return true;
        }

        return false;
    }

    private void Take(ref Slot slot, int tool, int day, long start, long cleanOut, long end, long tail, long used)
    {
        var w = slot.Worker * Ground.PerWorker;
        slot.Start = start;
        slot.CleanOut = cleanOut;
        slot.WorkStart = start + cleanOut + net[slot.Activity].SetUp;
        slot.End = end;
        slot.Day = day;
        slot.ToolNumber = -1;
        if (tool >= 0)
        {
            slot.ToolNumber = ((tool - (workers * Ground.PerWorker)) / Ground.PerTool) - ground.ToolStart[net.Tool[slot.Activity]];
            var owner = now[tool + 2];
            if (owner >= 0 && owner != slot.Worker && start < now[tool + 3] && now[tool + 3] == EndOfDay(owner))
                now[(owner * Ground.PerWorker) + 2] -= net.Problem.Tools[net.Tool[slot.Activity]].CloseDown[(int)now[tool]];
            now[tool] = net.Load[slot.Activity];
            now[tool + 1] = end;
            now[tool + 2] = slot.Worker;
            now[tool + 3] = net.Open[slot.Worker][day].End;
        }

        if (workers == 1 && now[w + 1] != day)
            PutDownTools(tool);
        now[w] = end;
        now[w + 1] = day;
        now[w + 2] = tail;
        now[w + 3] = used + (end - start);
    }

    // What was used on another day is clean and free: so that states become alike sooner.
    private void PutDownTools(int but)
    {
        for (var t = workers * Ground.PerWorker; t < now.Length; t += Ground.PerTool)
        {
            if (t == but)
                continue;
            now[t] = now[t + 2] = -1;
            now[t + 1] = now[t + 3] = long.MinValue / 4;
        }
    }

    private long EndOfDay(long worker)
    {
        var day = now[(worker * Ground.PerWorker) + 1];
        return net.Open[worker][day].End;
    }

    // Of several tools alike: the one that is ready soonest, then the one with the least to clean out.
    private int ChooseTool(int a, long from)
    {
        var t = net.Tool[a];
        var first = (workers * Ground.PerWorker) + (ground.ToolStart[t] * Ground.PerTool);
        if (net.Problem.Tools[t].Count == 1)
            return first;
        var best = -1;
        (long, long) least = default;
        for (var n = 0; n < net.Problem.Tools[t].Count; n++)
        {
            var at = first + (n * Ground.PerTool);
            var start = Math.Max(from, now[at + 1]);
            var held = now[at] >= 0 && start < now[at + 3] ? (int)now[at] : -1;
            var cleanOut = net.CleanOut(t, held, net.Load[a]);
            if (best < 0 || (start + cleanOut, cleanOut).CompareTo(least) < 0)
                (best, least) = (at, (start + cleanOut, cleanOut));
        }

        return best;
    }

    // If a wait backwards is broken: holds the earlier run back and returns its position. −1 if all are kept.
    private int Held(int p)
    {
        ref var slot = ref sequence.Slots[p];
        var a = slot.Activity;
        foreach (var arc in ground.Back[a])
        {
            if (arc.Whole)
            {
                if (slot.First + slot.Units == net.Units[a] && HoldBack(sequence.Starts[net.Offset[a + 1] - 1] + arc.Lag, net.Offset[arc.To], p) is var whole and not -1)
                    return whole;
                continue;
            }

            for (var k = slot.First; k < slot.First + slot.Units; k++)
            {
                if (HoldBack(sequence.Starts[net.Offset[a] + k] + arc.Lag, net.Offset[arc.To] + k, p) is var unit and not -1)
                    return unit;
            }
        }

        return -1;
    }

    private int HoldBack(long from, int unit, int p)
    {
        var missing = from - sequence.Starts[unit];
        if (missing <= 0)
            return -1;
        var position = sequence.PositionOf[unit];
        if (position > p)
            return -1; // it will wait for this one
        if (position < 0 || position == p)
            return Never;
        sequence.Touch(position);
        sequence.Slots[position].HeldUntil = sequence.Slots[position].WorkStart + missing;
        sequence.Slots[position].HeldInTrial = sequence.Trial;
        return position;
    }

    private void MarkNeighbours(in Slot slot, int p)
    {
        var a = slot.Activity;
        if (slot.First + slot.Units < net.Units[a])
            MarkUnit(net.Offset[a] + slot.First + slot.Units, p);
        foreach (var arc in ground.Forward[a])
            MarkArc(slot, arc, arc.To, p);
        foreach (var arc in net.In[a])
        {
            if (ground.Rank[arc.From] > ground.Rank[a])
                MarkArc(slot, arc, arc.From, p);
        }
    }

    private void MarkArc(in Slot slot, Arc arc, int other, int p)
    {
        if (arc.Whole)
        {
            MarkUnit(arc.To == other ? net.Offset[other] : net.Offset[other + 1] - 1, p);
            return;
        }

        for (var k = slot.First; k < slot.First + slot.Units; k++)
            MarkUnit(net.Offset[other] + k, p);
    }

    private void MarkUnit(int unit, int p)
    {
        var position = sequence.PositionOf[unit];
        if (position > p)
            Mark(position);
    }

    private static int FirstEnding(Interval[] open, int low, long at)
    {
        var high = open.Length;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (open[middle].End < at)
                low = middle + 1;
            else
                high = middle;
        }

        return low;
    }
}
