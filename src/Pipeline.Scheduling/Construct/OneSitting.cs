using System.Numerics;
using System.Runtime.InteropServices;

namespace Pipeline.Scheduling;

/// <summary>
/// Fills one sitting after another: what is ready is chosen so that the work that gets done is worth most, and a tool is got ready
/// only if that is worth it. A sitting can be emptied again.
/// </summary>
internal sealed class OneSitting
{
    private const int CellsPerPlacement = 500;
    private const int MostAtHand = 24;
    private const int MostOfLoad = Knapsack.MostItems - MostAtHand;

    private readonly Net net;
    private readonly Components components;
    private readonly Dispatcher dispatcher;
    private readonly Fitting fitting;
    private readonly double horizon;
    private readonly List<int> ready = [];
    private readonly List<int> candidates = [];
    private readonly List<double> urgencies = [];
    private readonly List<long> overheads = [];
    private readonly List<(int Group, int Units)> chosen = [];
    private readonly Knapsack knapsack;
    private readonly int[] missing;
    private readonly double[] keys;
    private readonly int[] toolUser;
    private readonly long[] readyFrom;
    private readonly HashSet<int> tried = [];
    private Filling filling = new([], 0, 0, 0, 0, Joins: false);
    private int number;
    private int sinceReady;

    /// <param name="net">The problem.</param>
    /// <param name="components">Its groups.</param>
    /// <param name="dispatcher">Puts in what is tied.</param>
    /// <param name="table">What is to be filled.</param>
    /// <param name="horizon">The key of what is least urgent.</param>
    public OneSitting(Net net, Components components, Dispatcher dispatcher, Timetable table, double horizon)
    {
        this.net = net;
        this.components = components;
        this.dispatcher = dispatcher;
        this.horizon = horizon;
        fitting = new Fitting(table);
        Table = table;
        knapsack = new Knapsack(Grain(net));
        keys = new double[components.Groups.Length];
        toolUser = [.. components.Groups.Select(group => group.FirstOrDefault(a => net.Tool[a] >= 0, -1))];
        readyFrom = new long[keys.Length];
        ReadyIn = new int[keys.Length];
        missing = [.. components.Groups.Select((group, g) => group.Sum(a => net.In[a].Count(arc => components.Of[arc.From] != g)))];
        // all at once: one that is settled already makes others ready
        foreach (var g in Enumerable.Range(0, missing.Length).Where(g => missing[g] == 0).ToArray())
            Ready(g);
    }

    public Timetable Table { get; }

    /// <summary>Whether anything is left that a sitting could be filled with.</summary>
    public bool HasMore => ready.Count > 0;

    /// <summary>Per group, the number of the sitting in which it became ready.</summary>
    public int[] ReadyIn { get; }

    /// <summary>Where a filling stood.</summary>
    internal sealed record Standing(int Runs, int[] Ready, int[] Missing, long[] ReadyFrom);

    /// <summary>Decides in another way from now on.</summary>
    public void Use(Filling how)
    {
        filling = how;
        for (var g = 0; g < keys.Length; g++)
            keys[g] = components.Groups[g].Min(a => how.Keys[a]);
    }

    /// <summary>Where it stands now.</summary>
    public Standing Mark() => new(Table.Runs.Count, [.. ready], [.. missing], [.. readyFrom]);

    /// <summary>Takes out what has been put in since.</summary>
    public void BackTo(Standing mark)
    {
        Table.TakeOutAfter(mark.Runs);
        ready.Clear();
        ready.AddRange(mark.Ready);
        mark.Missing.CopyTo(missing, 0);
        mark.ReadyFrom.CopyTo(readyFrom, 0);
    }

    /// <summary>Fills one sitting of one worker, the one with this number.</summary>
    public void Fill(int worker, int d, int sitting)
    {
        number = sitting;
        tried.Clear();
        var open = Table.Sittings[worker][d];
        var at = open.Start;
        for (var rounds = 0; rounds < 1000; rounds++)
        {
            var (from, to) = Gap(open, at);
            if (from >= to)
                return;
            var next = Candidates(worker, from, to);
            if (candidates.Count == 0)
            {
                // nothing is ready yet: later in this gap, or after it
                at = next < to ? next : to;
                continue;
            }

            if (!PutSome(worker, d, from, to))
                at = Math.Min(next, to);
            else
                at = from;
        }
    }

    // The greatest number of ticks of which all work and set-ups are multiples.
    private static long Grain(Net net)
    {
        var ticks = Enumerable.Range(0, net.Count).Where(a => net.Attended[a]).SelectMany(a => new[] { net[a].SetUp, net[a].PerUnit, net[a].PutAway });
        return Math.Max(1, (long)ticks.Aggregate(BigInteger.Zero, (all, t) => BigInteger.GreatestCommonDivisor(all, t)));
    }

    // The first stretch with nothing in it from a time on.
    private static (long From, long To) Gap(Sitting open, long at)
    {
        foreach (var block in open.Blocks)
        {
            if (block.End <= at)
                continue;
            if (block.Start > at)
                return (at, block.Start);
            at = block.End;
        }

        return (at, open.End - open.Tail);
    }

    // What could be taken up at a time, the most urgent first; returns when the next one could be.
    private long Candidates(int worker, long from, long to)
    {
        candidates.Clear();
        urgencies.Clear();
        var next = long.MaxValue;
        foreach (var g in ready)
        {
            var a = dispatcher.FirstOf(Table, g);
            if (net.Attended[a] && !net.Workers[a].Contains(worker))
                continue;
            var start = Math.Max(readyFrom[g] - net[a].SetUp, net[a].NotBefore);
            if (start > from)
            {
                if (start < to)
                    next = Math.Min(next, start);
                continue;
            }

            candidates.Add(g);
            urgencies.Add(keys[g]);
        }

        CollectionsMarshal.AsSpan(urgencies).Sort(CollectionsMarshal.AsSpan(candidates));
        return next;
    }

    private bool PutSome(int worker, int d, long from, long to)
    {
        Choose(Table.Sittings[worker][d], from, to);
        // choosing among many for a long gap takes as long as placing a few
        Table.Work += knapsack.Fineness * candidates.Count / CellsPerPlacement;
        if (PutOneTied(worker, d, chosen.Count > 0 ? keys[chosen[0].Group] : double.MaxValue))
            return true;
        var firstTied = candidates.FindIndex(g => components.IsTied[g]);
        var any = false;
        sinceReady = 0;
        foreach (var (g, units) in chosen)
        {
            // what is tied has its turn
            if (any && firstTied >= 0 && keys[candidates[firstTied]] < keys[g])
                break;
            var opens = NeedsLoad(candidates.IndexOf(g)).Tool >= 0;
            any |= Put(g, units, worker, d, from);
            // what has become ready, or another load once the tool is in use, may be better than the rest
            if (sinceReady > 0 || opens)
                break;
        }

        return any;
    }

    // What is tied goes in before what is less urgent or when it has waited long enough, or if its tool is in use then anyway.
    private bool PutOneTied(int worker, int d, double urgency)
    {
        foreach (var g in candidates)
        {
            if (!components.IsTied[g])
                continue;
            var mustGo = keys[g] <= urgency || (toolUser[g] >= 0 && number - ReadyIn[g] > filling.Patience);
            if (!mustGo && (!filling.Joins || toolUser[g] < 0 || tried.Contains(g)))
                continue;
            tried.Add(g);
            var runs = Table.Runs.Count;
            if (!dispatcher.PutTied(Table, fitting, g))
                continue;
            // what would only begin later is better decided then
            var fresh = Table.Runs[runs..];
            if (fresh.Exists(run => run.Worker == worker && run.Sitting == d) && (mustGo || fresh.TrueForAll(run => IsInUseAnyway(run, fresh))))
            {
                Settled(g);
                return true;
            }

            Table.TakeOutAfter(runs);
        }

        return false;
    }

    // Whether a run has no tool, or one that another than these uses in the same sitting.
    private bool IsInUseAnyway(Placed run, List<Placed> fresh) => run.ToolNumber < 0 || Table.Sittings[run.Worker][run.Sitting].Blocks.Exists(other =>
        other.ToolNumber >= 0 && net.Tool[other.Activity] == net.Tool[run.Activity] && !fresh.Contains(other));

    // Chooses what is worth most until the end of the gap, of what needs nothing got ready and of one load that does; the most urgent first.
    private void Choose(Sitting open, long from, long to)
    {
        // of a long gap no more than the day allows
        var gap = Math.Clamp(open.Workday.Free, 0, to - from);
        overheads.Clear();
        foreach (var g in candidates)
            overheads.Add(components.IsTied[g] ? long.MaxValue : Overhead(g, open, from));
        knapsack.Begin(gap);
        for (var i = 0; i < candidates.Count && knapsack.Count < MostAtHand; i++)
        {
            if (overheads[i] == 0)
                Add(candidates[i]);
        }

        knapsack.Mark();
        var best = knapsack.WorthOf(gap);
        knapsack.Choose(gap, chosen);
        for (var i = 0; i < candidates.Count; i++)
        {
            var room = gap - overheads[i];
            if (overheads[i] == 0 || room <= 0 || FirstOfLoad(i) < i)
                continue;
            knapsack.BackToMark();
            var others = knapsack.Count;
            for (var j = i; j < candidates.Count && knapsack.Count < others + MostOfLoad; j++)
            {
                if (IsSameLoad(i, j))
                    Add(candidates[j]);
            }

            if (knapsack.WorthOf(room) - (filling.ChangePrice * overheads[i]) is var worth && worth > best)
            {
                best = worth;
                knapsack.Choose(room, chosen);
            }
        }

        chosen.Sort((one, other) => keys[one.Group].CompareTo(keys[other.Group]) is var order && order != 0 ? order : one.Group.CompareTo(other.Group));
    }

    private int FirstOfLoad(int i)
    {
        var first = 0;
        while (!IsSameLoad(first, i))
            first++;
        return first;
    }

    private bool IsSameLoad(int i, int j) => i == j || (NeedsLoad(i) is var one && one.Tool >= 0 && one == NeedsLoad(j));

    // The load that a tool would have to be got ready with; none where nothing needs to be, or where it is not done here.
    private (int Tool, int Load) NeedsLoad(int i) => overheads[i] is 0 or long.MaxValue
        ? (-1, -1)
        : (net.Tool[toolUser[candidates[i]]], net.Load[toolUser[candidates[i]]]);

    private void Add(int g)
    {
        var a = components.Groups[g][0];
        var units = net.Units[a] - Placing.NextUnit(Table, a);
        var worth = 1 - (filling.UrgencyWorth * keys[g] / horizon) + (net.Tool[a] >= 0 ? filling.ToolWorth : 0);
        // what is done together takes as long whatever its number
        var isWhole = net.Whole[a];
        knapsack.Add(g, net[a].SetUp + net[a].PutAway + (isWhole ? net.Work(a, units) : 0), isWhole ? 0 : net[a].PerUnit, units, isWhole, worth);
    }

    private bool Put(int g, int units, int worker, int d, long from)
    {
        var a = components.Groups[g][0];
        var first = Placing.NextUnit(Table, a);
        Table.Work++;
        var spot = fitting.InSitting(a, first, units, worker, d, Placing.WorkFrom(Table, a, first, units), Math.Max(from, net[a].NotBefore));
        if (!Placing.TryPut(Table, a, first, units, spot))
            return false;
        Settled(g);
        return true;
    }

    // Attended ticks to get the tool ready, and to close it down if it would not be used in this sitting otherwise.
    private long Overhead(int g, Sitting open, long at)
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
            var isOpen = held >= 0 || (last + 1 < uses.Count && uses[last + 1].Start < open.End);
            least = Math.Min(least, net.CleanOut(net.Tool[a], held, net.Load[a]) + (isOpen ? 0 : Table.CloseDown(a)));
        }

        return least;
    }

    private void Settled(int g)
    {
        if (components.Groups[g].Any(a => Placing.IsMissing(Table, a)))
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
        ReadyIn[g] = number;
        sinceReady++;
        var a = components.Groups[g][0];
        if (components.Groups[g].All(b => !Placing.IsMissing(Table, b)))
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
        var first = Placing.NextUnit(Table, a);
        readyFrom[g] = Placing.WorkFrom(Table, a, first, components.IsTied[g] ? 1 : net.Units[a] - first);
    }
}
