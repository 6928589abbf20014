namespace Pipeline.Scheduling;

/// <summary>How one filling of the sittings decides.</summary>
/// <param name="Keys">Per activity, on the clock of those at hand: smaller comes first.</param>
/// <param name="ChangeWorth">By how many ticks of its key a run may come later for a tick of clean-out saved.</param>
/// <param name="FullFrom">A gap up to so many ticks is filled by choosing the runs that leave the shortest rest.</param>
internal sealed record Filling(double[] Keys, double ChangeWorth, long FullFrom);

/// <summary>
/// Fills a timetable sitting after sitting, as a painter would: the most urgent of what is ready, a tool only when there is
/// enough to do with it, and towards the end what fits best into the rest.
/// </summary>
internal sealed class SittingFiller(Net net, Components components, Dispatcher dispatcher)
{
    private readonly Timetable table = new(net);
    private readonly List<int> ready = [];
    private readonly List<int> candidates = [];
    private readonly RestFilling rests = new();
    private Fitting fitting = null!;
    private Filling filling = null!;
    private int[] missing = [];
    private double[] keys = [];
    private long[] readyFrom = [];
    private double[] scores = [];
    private Comparison<int> byScore = (x, y) => x - y;

    /// <summary>
    /// The timetable, as far as it could be filled; the groups that are not in it are left to the dispatcher.
    /// Null if what must start at a given tick cannot.
    /// </summary>
    public Timetable? Fill(Filling how)
    {
        filling = how;
        fitting = new Fitting(table);
        if (!dispatcher.PutPinned(table, fitting))
            return null;
        keys = [.. components.Groups.Select(g => g.Min(a => how.Keys[a]))];
        readyFrom = new long[keys.Length];
        scores = new double[keys.Length];
        byScore = (x, y) => scores[x] != scores[y] ? scores[x].CompareTo(scores[y]) : x - y;
        missing = [.. components.Groups.Select((group, g) => group.Sum(a => net.In[a].Count(arc => components.Of[arc.From] != g)))];
        // all at once: one that is settled already makes others ready
        foreach (var g in Enumerable.Range(0, missing.Length).Where(g => missing[g] == 0).ToArray())
            Ready(g);

        var days = Enumerable.Range(0, table.Days.Length)
            .SelectMany(w => Enumerable.Range(0, table.Days[w].Length).Select(d => (Worker: w, Day: d, table.Days[w][d].Start)))
            .OrderBy(d => d.Start).ThenBy(d => d.Worker);
        foreach (var (worker, day, _) in days)
        {
            if (ready.Count == 0)
                break;
            Fill(worker, day);
        }

        return table;
    }

    private void Fill(int worker, int d)
    {
        var day = table.Days[worker][d];
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
            var a = dispatcher.FirstOf(table, g);
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
        var day = table.Days[worker][d];
        foreach (var g in candidates)
            scores[g] = Score(g, day, from);
        candidates.Sort(byScore);
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
        if (!dispatcher.PutLot(table, fitting, g))
            return false;
        Settled(g);
        return true;
    }

    // The whole lot, or as many units as fit before the sitting ends.
    private bool Put(int g, int worker, int d, long from, long to, bool parting)
    {
        var a = components.Groups[g][0];
        var first = dispatcher.NextUnit(table, a);
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
        table.Work++;
        var spot = fitting.InDay(a, units, worker, d, dispatcher.WorkFrom(table, a, first, units), Math.Max(from, net[a].NotBefore));
        if (spot.IsNone)
            return false;
        table.Put(a, first, units, spot);
        if (dispatcher.Broken(table, a, first, units) is not null)
        {
            table.TakeOutLast();
            return false;
        }

        Settled(g);
        return true;
    }

    // The runs that together leave the shortest rest, the more urgent ones among those alike.
    private bool PutBestFit(int worker, int d, long from, long to)
    {
        var day = table.Days[worker][d];
        rests.Begin(to - from);
        foreach (var g in candidates)
        {
            var a = components.Groups[g][0];
            if (components.IsTied[g] || Overhead(g, day, from) > 0)
                continue;
            var units = net.Units[a] - dispatcher.NextUnit(table, a);
            var isWhole = net.Whole[a];
            if (!rests.Add(g, net[a].SetUp + net[a].PutAway, isWhole ? net.Work(a, units) : net[a].PerUnit, isWhole ? 1 : units))
                break;
        }

        var any = false;
        foreach (var (g, units) in rests.Best())
        {
            var a = components.Groups[g][0];
            var first = dispatcher.NextUnit(table, a);
            any |= Put(g, first, net.Whole[a] ? net.Units[a] - first : units, worker, d, Gap(day, from).From);
        }

        return any;
    }

    private double Score(int g, Day day, long at) => keys[g] + (filling.ChangeWorth * Overhead(g, day, at));

    // Attended ticks to get the tool ready, and to close it down if it would not be used in this sitting otherwise.
    private long Overhead(int g, Day day, long at)
    {
        var a = components.Groups[g].FirstOrDefault(a => net.Tool[a] >= 0, -1);
        if (a < 0)
            return 0;
        var least = long.MaxValue;
        foreach (var uses in table.Uses[net.Tool[a]])
        {
            var last = uses.Count - 1;
            while (last >= 0 && uses[last].Start > at)
                last--;
            var held = table.Held(last < 0 ? null : uses[last], at);
            var isOpen = held >= 0 || (last + 1 < uses.Count && uses[last + 1].Start < day.End);
            least = Math.Min(least, net.CleanOut(net.Tool[a], held, net.Load[a]) + (isOpen ? 0 : table.CloseDown(a)));
        }

        return least;
    }

    private void Settled(int g)
    {
        if (components.Groups[g].Any(a => dispatcher.IsMissing(table, a)))
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
        if (components.Groups[g].All(b => !dispatcher.IsMissing(table, b)))
        {
            ready.Add(g);
            Settled(g);
            return;
        }

        if (!components.IsTied[g] && !net.Attended[a])
        {
            // by itself, as soon as can be
            ready.Add(g);
            if (dispatcher.PutUnits(table, fitting, a, 0))
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
        var a = dispatcher.FirstOf(table, g);
        var first = dispatcher.NextUnit(table, a);
        readyFrom[g] = dispatcher.WorkFrom(table, a, first, components.IsTied[g] ? 1 : net.Units[a] - first);
    }
}
