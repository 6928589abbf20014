namespace Pipeline.Scheduling;

/// <summary>
/// Changes in the order of runs: one goes elsewhere, or all that greatest waits tie together; lots are joined or parted, runs with the same
/// load brought together; another takes it, with another tool, or on another evening.
/// </summary>
internal sealed class Moves(Ground ground, Random random)
{
    private const int Near = 30;
    private const int Short = 60;

    // In a hundred, where there is anything to do of the kind.
    private const int TiedTogethers = 20;
    private const int OtherTools = 8;
    private const int Delays = 4;

    private readonly Net net = ground.Net;
    private readonly List<int> tied = [];
    private Sequence sequence = null!;

    /// <summary>Makes one; the stretch of positions it touches, or (−1, −1) if it is none.</summary>
    public (int From, int To) Make(Sequence changed)
    {
        sequence = changed;
        var p = random.Next(sequence.Count);
        if (sequence.Slots[p].Units == 0)
            return (-1, -1);
        if (sequence.Count < Short && random.Next(4) == 0)
            return Several(p);
        if (ground.Tied[sequence.Slots[p].Activity].Length > 0 && random.Next(100) < TiedTogethers)
            return TiedTogether(p);
        if (ground.HasAlike && random.Next(100) < OtherTools)
            return OtherTool(p);
        if (random.Next(100) < Delays)
            return Delayed(p);
        return random.Next(100) switch
        {
            < 35 => Shift(p, 1 + random.Next(random.Next(2) == 0 ? 4 : Near)),
            < 50 => ToSameLoad(p),
            < 60 => Join(p),
            < 65 => Part(p),
            < 85 => FillRest(p),
            < 90 => Balance(p),
            < 93 => OtherWorker(p),
            < 97 => Several(p),
            _ => Shift(p, 1 + random.Next(4 * Near)),
        };
    }

    // The next rest at the end of an interval is filled with a later run, or with as many of a run's units as fit.
    private (int From, int To) FillRest(int p)
    {
        var slots = sequence.Slots;
        var last = p;
        var next = p + 1;
        for (; next < sequence.Count; next++)
        {
            if (slots[next].Units == 0 || slots[next].Worker != slots[p].Worker || slots[next].Worker < 0)
                continue;
            if (slots[next].Day != slots[last].Day)
                break;
            last = next;
        }

        if (next >= sequence.Count || slots[last].Worker < 0)
            return (-1, -1);
        var closing = net.Tool[slots[last].Activity] < 0 ? 0 : net.Problem.Tools[net.Tool[slots[last].Activity]].CloseDown[net.Load[slots[last].Activity]];
        var rest = net.Open[slots[last].Worker][slots[last].Day].End - slots[last].End - closing;
        for (var tries = 0; tries < 8; tries++)
        {
            var q = next + (tries == 0 ? 0 : random.Next(2 * Near));
            if (q >= sequence.Count || slots[q].Units == 0 || slots[q].Worker < 0)
                continue;
            var a = slots[q].Activity;
            var room = rest - net[a].SetUp - net[a].PutAway;
            if (net.Work(a, slots[q].Units) <= room)
            {
                if (q != next && Reach(q, next) == next)
                    return MoveTo(q, next);
                continue;
            }

            if (net.Whole[a] || net[a].PerUnit == 0 || room < net[a].PerUnit || Reach(q, next) != next)
                continue;
            return PartOff(q, (int)(room / net[a].PerUnit), next, takeFirst: true);
        }

        return (-1, -1);
    }

    private (int From, int To) Shift(int p, int distance)
    {
        var to = random.Next(2) == 0 ? Math.Min(sequence.Count - 1, p + distance) : Math.Max(0, p - distance);
        return MoveTo(p, to);
    }

    // A few runs at once: greatest waits can forbid every single step on the way to a better order.
    private (int From, int To) Several(int p)
    {
        var (from, to) = (-1, -1);
        for (var count = 2 + random.Next(3); count > 0; count--)
        {
            var near = Math.Clamp(p + random.Next(-9, 10), 0, sequence.Count - 1);
            if (sequence.Slots[near].Units == 0)
                continue;
            var one = Shift(near, 1 + random.Next(4));
            if (one.From < 0)
                continue;
            from = from < 0 ? one.From : Math.Min(from, one.From);
            to = Math.Max(to, one.To);
        }

        return (from, to);
    }

    private (int From, int To) MoveTo(int p, int to)
    {
        to = Reach(p, to);
        if (to == p)
            return (-1, -1);
        sequence.Move(p, to);
        if (to < p)
            sequence.Slots[to].Delay = Slot.NoDelay;
        return (Math.Min(p, to), Math.Max(p, to) + 1);
    }

    // How far towards a position a run can move without passing one that it must precede or follow.
    private int Reach(int p, int to)
    {
        var slots = sequence.Slots;
        var at = p;
        while (at < to && !ground.MustPrecede(slots[p], slots[at + 1]))
            at++;
        while (at > to && !ground.MustPrecede(slots[at - 1], slots[p]))
            at--;
        return at;
    }

    private (int From, int To) ToSameLoad(int p)
    {
        var a = sequence.Slots[p].Activity;
        if (net.Tool[a] < 0)
            return Shift(p, 1 + random.Next(Near));
        var forward = random.Next(2) == 0;
        var skip = random.Next(3);
        for (int q = forward ? p + 1 : p - 1, seen = 0; q >= 0 && q < sequence.Count && seen < 6 * Near; q += forward ? 1 : -1, seen++)
        {
            if (sequence.Slots[q].Units == 0)
                continue;
            var other = sequence.Slots[q].Activity;
            if (net.Tool[other] == net.Tool[a] && net.Load[other] == net.Load[a] && skip-- == 0)
                return MoveTo(p, forward ? q - 1 : q + 1);
        }

        return (-1, -1);
    }

    // The run and the next one of the same activity become one.
    private (int From, int To) Join(int p)
    {
        var slot = sequence.Slots[p];
        var end = slot.First + slot.Units;
        if (end >= net.Units[slot.Activity])
            return (-1, -1);
        var next = sequence.PositionOf[net.Offset[slot.Activity] + end];
        var units = sequence.Slots[next].Units;
        // either side may go to the other, if nothing between forbids it
        if (random.Next(2) == 0 && Reach(next, p + 1) == p + 1)
        {
            sequence.Remove(next);
            sequence.Resize(p, slot.First, slot.Units + units);
            return (p, next + 1);
        }

        if (Reach(p, next - 1) != next - 1)
            return (-1, -1);
        sequence.Remove(p);
        sequence.Resize(next, slot.First, slot.Units + units);
        return (p, next + 1);
    }

    private (int From, int To) Part(int p)
    {
        var slot = sequence.Slots[p];
        if (slot.Units < 2 || net.Whole[slot.Activity])
            return (-1, -1);
        var stay = 1 + random.Next(slot.Units - 1);
        var distance = random.Next(Near);
        // the later part moves on, or the earlier part forward
        if (random.Next(2) == 0)
            return PartOff(p, stay, Math.Min(sequence.Count - 1, p + distance) + 1, takeFirst: false);
        return PartOff(p, stay, Math.Max(0, p - distance), takeFirst: true);
    }

    // Some of a run's units go to before what is at another position, as far as nothing between forbids it.
    private (int From, int To) PartOff(int p, int firstUnits, int to, bool takeFirst)
    {
        var slot = sequence.Slots[p];
        var off = slot;
        if (takeFirst)
        {
            to = Reach(p, to);
            off.Units = firstUnits;
            sequence.Resize(p, slot.First + firstUnits, slot.Units - firstUnits);
        }
        else
        {
            to = Reach(p, to - 1) + 1;
            off.First = slot.First + firstUnits;
            off.Units = slot.Units - firstUnits;
            sequence.Resize(p, slot.First, firstUnits);
        }

        var (_, from, until) = sequence.Insert(to, off);
        return (Math.Max(0, Math.Min(from, p - 1)), Math.Max(until, p + 2));
    }

    // Units go over from one run of an activity to the next, or back.
    private (int From, int To) Balance(int p)
    {
        var slot = sequence.Slots[p];
        var end = slot.First + slot.Units;
        if (end >= net.Units[slot.Activity])
            return (-1, -1);
        var q = sequence.PositionOf[net.Offset[slot.Activity] + end];
        var next = sequence.Slots[q];
        var shift = random.Next(2) == 0 ? 1 + random.Next(next.Units) : -(1 + random.Next(slot.Units));
        if (slot.Units + shift < 1 || next.Units - shift < 1)
            return (-1, -1);
        // what the units' predecessors and successors allow is looked at between the two
        for (var between = p + 1; between < q; between++)
        {
            if (ground.MustPrecede(slot, sequence.Slots[between]) || ground.MustPrecede(sequence.Slots[between], next))
                return (-1, -1);
        }

        sequence.Resize(p, slot.First, slot.Units + shift);
        sequence.Resize(q, next.First + shift, next.Units - shift);
        return (p, q + 1);
    }

    // What greatest waits tie together goes by the same distance: one alone would only be held back by the others.
    private (int From, int To) TiedTogether(int p)
    {
        var group = ground.Tied[sequence.Slots[p].Activity];
        tied.Clear();
        foreach (var a in group)
        {
            for (var u = net.Offset[a] + net.Done[a]; u < net.Offset[a + 1]; u++)
            {
                if (u == net.Offset[a] + net.Done[a] || sequence.PositionOf[u] != sequence.PositionOf[u - 1])
                    tied.Add(sequence.PositionOf[u]);
            }
        }

        tied.Sort();
        var distance = 1 + random.Next(random.Next(2) == 0 ? 8 : 2 * Near);
        var forward = random.Next(2) == 0;
        if (forward)
            tied.Reverse();
        var (from, to) = (-1, -1);
        foreach (var at in tied)
        {
            var one = MoveTo(at, Math.Clamp(forward ? at + distance : at - distance, 0, sequence.Count - 1));
            if (one.From < 0)
                continue;
            from = from < 0 ? one.From : Math.Min(from, one.From);
            to = Math.Max(to, one.To);
        }

        return (from, to);
    }

    // A run is left for another interval though there would be time for it, or no longer.
    private (int From, int To) Delayed(int p)
    {
        var slot = sequence.Slots[p];
        if (slot.Worker < 0 || slot.Day < 0)
            return (-1, -1);
        var next = slot.Day + 1 + (random.Next(3) == 0 ? random.Next(3) : 0);
        if (slot.Delay == Slot.NoDelay && next >= net.Open[slot.Worker].Length)
            return (-1, -1);
        sequence.Touch(p);
        sequence.Slots[p].Delay = slot.Delay == Slot.NoDelay ? net.Open[slot.Worker][next].Start : Slot.NoDelay;
        return (p, p + 1);
    }

    private (int From, int To) OtherTool(int p)
    {
        var tool = net.Tool[sequence.Slots[p].Activity];
        if (tool < 0 || net.Problem.Tools[tool].Count < 2)
            return (-1, -1);
        sequence.Touch(p);
        sequence.Slots[p].ToolWish = random.Next(-1, net.Problem.Tools[tool].Count);
        return (p, p + 1);
    }

    private (int From, int To) OtherWorker(int p)
    {
        var workers = net.Workers[sequence.Slots[p].Activity];
        if (workers.Length < 2)
            return Shift(p, 1 + random.Next(4));
        sequence.Touch(p);
        sequence.Slots[p].Worker = workers[random.Next(workers.Length)];
        return (p, p + 1);
    }
}
