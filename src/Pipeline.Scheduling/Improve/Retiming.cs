namespace Pipeline.Scheduling;

/// <summary>
/// Gives the runs of a sequence their times, from a position on, until the schedule falls back into step with what it was.
/// </summary>
internal sealed class Retiming(Ground ground)
{
    private const int MostHolds = 40;
    private const int Never = int.MaxValue;

    private readonly Net net = ground.Net;
    private readonly Hands hands = new(ground);
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
        if (changed.Places.CanFill)
            Clear(from);
        var holds = 0;
        var kept = true;
        var size = ground.StateSize;
        for (var p = from; p >= 0 && p < changed.Count; p = NextStale(p))
        {
            Array.Copy(changed.States, p * size, hands.Now, 0, size);
            // from here on without jumps, until the state is what it was
            while (true)
            {
                stale[p] = false;
                Touched(p);
                Work++;
                var back = sequence.Slots[p].Units == 0 ? -1 : Time(p) ? Held(p) : Never;
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
                    if (changed.Places.CanFill)
                        Clear(back);
                    break;
                }

                p++;
                if (p >= changed.Count)
                    break;
                if (hands.Now.AsSpan().SequenceEqual(changed.States.AsSpan(p * size, size)))
                {
                    p--;
                    break;
                }

                changed.Touch(p);
                Array.Copy(hands.Now, 0, changed.States, p * size, size);
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
        var startFrom = net.PinnedStart[a] ?? Math.Max(slot.Delay, net[a].NotBefore);
        var before = slot.WorkStart;
        if (!hands.Time(ref slot, workFrom, startFrom, sequence.Places))
        {
            slot.WorkStart = Timetable.Unset;
            return false;
        }

        if (net.PinnedStart[a] is { } pin && slot.Start != pin)
        {
            slot.WorkStart = Timetable.Unset;
            return false;
        }

        sequence.Places.Add(a, slot.First, slot.Units, slot.WorkStart);
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
        slot.Changes = slot.CleanOut + slot.Closing + net[a].SetUp + net[a].PutAway;
        var offset = net.Offset[a] + slot.First;
        if (slot.Worker >= 0)
        {
            var reading = ground.ReadingAtOpening[slot.Worker][slot.Day] + slot.End - net.Open[slot.Worker][slot.Day].Start;
            slot.Completion = (reading * slot.Units * ground.CompletionWeight[a]) + ground.Haste.Of(offset + slot.Units - 1, reading)
                - (Pricing.PackingWeight * slot.Packing);
        }

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
}
