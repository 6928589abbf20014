using System.Runtime.InteropServices;

namespace Pipeline.Scheduling;

/// <summary>
/// Fills one sitting after another: the most urgent of what is ready, a tool only when there is enough to do with it, and
/// towards the end what fits best into the rest. A sitting can be emptied again.
/// </summary>
internal sealed class OneSitting
{
    private const int ScoredPerPlacement = 24;

    private readonly Net net;
    private readonly Components components;
    private readonly Dispatcher dispatcher;
    private readonly Fitting fitting;
    private readonly Filling filling;
    private readonly List<int> ready = [];
    private readonly List<int> candidates = [];
    private readonly RestFilling rests = new();
    private readonly int[] missing;
    private readonly double[] keys;
    private readonly int[] toolUser;
    private readonly long[] readyFrom;
    private readonly List<double> scores = [];
    private Shaking shaking;

    public OneSitting(Net net, Components components, Dispatcher dispatcher, Timetable table, Fitting fitting, Filling how)
    {
        this.net = net;
        this.components = components;
        this.dispatcher = dispatcher;
        this.fitting = fitting;
        Table = table;
        filling = how;
        keys = [.. components.Groups.Select(group => group.Min(a => how.Keys[a]))];
        toolUser = [.. components.Groups.Select(group => group.FirstOrDefault(a => net.Tool[a] >= 0, -1))];
        readyFrom = new long[keys.Length];
        missing = [.. components.Groups.Select((group, g) => group.Sum(a => net.In[a].Count(arc => components.Of[arc.From] != g)))];
        // all at once: one that is settled already makes others ready
        foreach (var g in Enumerable.Range(0, missing.Length).Where(g => missing[g] == 0).ToArray())
            Ready(g);
    }

    public Timetable Table { get; }

    /// <summary>Whether anything is left that a sitting could be filled with.</summary>
    public bool HasMore => ready.Count > 0;

    /// <summary>Where a filling stood.</summary>
    internal sealed record Standing(int Runs, int[] Ready, int[] Missing, long[] ReadyFrom);

    /// <summary>Where it stands now.</summary>
    public Standing Mark() => new(Table.Runs.Count, [.. ready], [.. missing], [.. readyFrom]);

    /// <summary>Takes out what has been put in since.</summary>
    public void BackTo(Standing mark)
    {
        while (Table.Runs.Count > mark.Runs)
            Table.TakeOutLast();
        ready.Clear();
        ready.AddRange(mark.Ready);
        mark.Missing.CopyTo(missing, 0);
        mark.ReadyFrom.CopyTo(readyFrom, 0);
    }

    /// <summary>Fills one sitting of one worker.</summary>
    public void Fill(int worker, int d, Shaking shaken)
    {
        shaking = shaken;
        var day = Table.Days[worker][d];
        var at = day.Start;
        for (var rounds = 0; rounds < 1000; rounds++)
        {
            var (from, to) = Gap(day, at);
            if (from >= to)
                return;
            var next = Candidates(worker, from, to);
            if (candidates.Count == 0)
            {
                // nothing is ready yet: later in this gap, or after it
                at = next < to ? next : to;
                continue;
            }

            if (!PutOne(worker, d, from, to))
                at = Math.Min(next, to);
            else
                at = from;
        }
    }

    // The first stretch with nothing in it from a time on.
    private static (long From, long To) Gap(Day day, long at)
    {
        foreach (var block in day.Blocks)
        {
            if (block.End <= at)
                continue;
            if (block.Start > at)
                return (at, block.Start);
            at = block.End;
        }

        return (at, day.End - day.Tail);
    }

    // What could be taken up at a time; returns when the next one could be.
    private long Candidates(int worker, long from, long to)
    {
        candidates.Clear();
        var next = long.MaxValue;
        foreach (var g in ready)
        {
            var a = dispatcher.FirstOf(Table, g);
            if (net.Attended[a] && !net.Workers[a].Contains(worker))
                continue;
            var start = Math.Max(readyFrom[g] - net[a].SetUp, net[a].NotBefore);
            if (start <= from)
                candidates.Add(g);
            else if (start < to)
                next = Math.Min(next, start);
        }

        return next;
    }

    private bool PutOne(int worker, int d, long from, long to)
    {
        var day = Table.Days[worker][d];
        // going through many takes as long as placing a few
        Table.Work += candidates.Count / ScoredPerPlacement;
        scores.Clear();
        foreach (var g in candidates)
            scores.Add(Score(g, day, from));
        CollectionsMarshal.AsSpan(scores).Sort(CollectionsMarshal.AsSpan(candidates));
        var first = candidates[0];
        if (to - from <= filling.FullFrom && !components.IsTied[first] && Overhead(first, day, from) == 0 && PutBestFit(worker, d, from, to))
            return true;
        foreach (var g in candidates)
        {
            if (components.IsTied[g] ? PutTied(g) : Put(g, worker, d, from, to, parting: to == day.End - day.Tail))
                return true;
        }

        return false;
    }

    private bool PutTied(int g)
    {
        if (!dispatcher.PutLot(Table, fitting, g))
            return false;
        Settled(g);
        return true;
    }

    // The whole lot, or as many units as fit before the sitting ends.
    private bool Put(int g, int worker, int d, long from, long to, bool parting)
    {
        var a = components.Groups[g][0];
        var first = dispatcher.NextUnit(Table, a);
        var units = net.Units[a] - first;
        var room = to - from - net[a].SetUp - net[a].PutAway;
        if (net.Work(a, units) > room)
        {
            if (!parting || net.Whole[a] || room < 2 * net[a].SetUp)
                return false;
            units = (int)Math.Min(units - 1, room / Math.Max(1, net[a].PerUnit));
        }

        for (; units > 0; units = parting && !net.Whole[a] ? units - 1 : 0)
        {
            if (Put(g, first, units, worker, d, from))
                return true;
        }

        return false;
    }

    private bool Put(int g, int first, int units, int worker, int d, long from)
    {
        var a = components.Groups[g][0];
        Table.Work++;
        var spot = fitting.InDay(a, units, worker, d, dispatcher.WorkFrom(Table, a, first, units), Math.Max(from, net[a].NotBefore));
        if (spot.IsNone)
            return false;
        Table.Put(a, first, units, spot);
        if (dispatcher.Broken(Table, a, first, units) is not null)
        {
            Table.TakeOutLast();
            return false;
        }

        Settled(g);
        return true;
    }

    // The runs that together leave the shortest rest, the more urgent ones among those alike.
    private bool PutBestFit(int worker, int d, long from, long to)
    {
        var day = Table.Days[worker][d];
        rests.Begin(to - from);
        foreach (var g in candidates)
        {
            var a = components.Groups[g][0];
            if (components.IsTied[g] || Overhead(g, day, from) > 0)
                continue;
            var units = net.Units[a] - dispatcher.NextUnit(Table, a);
            var isWhole = net.Whole[a];
            if (!rests.Add(g, net[a].SetUp + net[a].PutAway, isWhole ? net.Work(a, units) : net[a].PerUnit, isWhole ? 1 : units))
                break;
        }

        var any = false;
        foreach (var (g, units) in rests.Best())
        {
            var a = components.Groups[g][0];
            var first = dispatcher.NextUnit(Table, a);
            any |= Put(g, first, net.Whole[a] ? net.Units[a] - first : units, worker, d, Gap(day, from).From);
        }

        return any;
    }

    private double Score(int g, Day day, long at) => keys[g] + (filling.ChangeWorth * Overhead(g, day, at)) + shaking.Of(g);

    // Attended ticks to get the tool ready, and to close it down if it would not be used in this sitting otherwise.
    private long Overhead(int g, Day day, long at)
    {
        var a = toolUser[g];
        if (a < 0)
            return 0;
        var least = long.MaxValue;
        foreach (var uses in Table.Uses[net.Tool[a]])
        {
            var last = uses.Count - 1;
            while (last >= 0 && uses[last].Start > at)
                last--;
            var held = Table.Held(last < 0 ? null : uses[last], at);
            var isOpen = held >= 0 || (last + 1 < uses.Count && uses[last + 1].Start < day.End);
            least = Math.Min(least, net.CleanOut(net.Tool[a], held, net.Load[a]) + (isOpen ? 0 : Table.CloseDown(a)));
        }

        return least;
    }

    private void Settled(int g)
    {
        if (components.Groups[g].Any(a => dispatcher.IsMissing(Table, a)))
        {
            SetReadyFrom(g);
            return;
        }

        ready.Remove(g);
        foreach (var a in components.Groups[g])
        {
            foreach (var arc in net.Out[a])
            {
                var to = components.Of[arc.To];
                if (to != g && --missing[to] == 0)
                    Ready(to);
            }
        }
    }

    private void Ready(int g)
    {
        var a = components.Groups[g][0];
        if (components.Groups[g].All(b => !dispatcher.IsMissing(Table, b)))
        {
            ready.Add(g);
            Settled(g);
            return;
        }

        if (!components.IsTied[g] && !net.Attended[a])
        {
            // by itself, as soon as can be
            ready.Add(g);
            if (dispatcher.PutUnits(Table, fitting, a, 0))
                Settled(g);
            else
                ready.Remove(g);
            return;
        }

        ready.Add(g);
        SetReadyFrom(g);
    }

    private void SetReadyFrom(int g)
    {
        var a = dispatcher.FirstOf(Table, g);
        var first = dispatcher.NextUnit(Table, a);
        readyFrom[g] = dispatcher.WorkFrom(Table, a, first, components.IsTied[g] ? 1 : net.Units[a] - first);
    }
}
