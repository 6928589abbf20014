namespace Pipeline.Scheduling;

/// <summary>What all walks of a search share and none of them changes.</summary>
internal sealed class Ground
{
    public const int PerWorker = 4;
    public const int PerTool = 5;

    // Above this the table of who must come before whom would be too large; then the arcs are looked through.
    private const int MostInTable = 6000;

    private readonly ulong[]? before;
    private readonly int words;
    private readonly double[] sessionCost;
    private readonly double sessionHalf;

    public Ground(Net net, Components components, Heads heads, Haste haste)
    {
        Net = net;
        Haste = haste;
        Tied = [.. components.Of.Select(g => components.IsTied[g] ? components.Groups[g] : [])];
        HasAlike = net.Problem.Tools.Any(tool => tool.Count > 1);
        Rank = new int[net.Count];
        var rank = 0;
        foreach (var group in components.Groups)
        {
            foreach (var a in group.OrderBy(a => heads.Starts[net.Offset[a + 1] - 1]).ThenBy(a => a))
                Rank[a] = rank++;
        }

        Clock = new OpenTime(net, Enumerable.Range(0, net.Problem.Workers.Length), once: true);
        ReadingAtOpening = [.. net.Open.Select(open => open.Select(o => Clock.At(o.Start)).ToArray())];
        ToolStart = new int[net.Problem.Tools.Length + 1];
        for (var t = 0; t < net.Problem.Tools.Length; t++)
            ToolStart[t + 1] = ToolStart[t] + net.Problem.Tools[t].Count;
        var works = Enumerable.Range(0, net.Count).Select(a => net.Attended[a] ? net.Work(a, net.Units[a]) : 0).ToArray();
        var attended = Math.Max(1, net.Attended.Count(a => a));
        var all = Math.Max(1, works.Sum());
        CompletionWeight = [.. Enumerable.Range(0, net.Count).Select(a => ((1.0 / attended) + ((double)works[a] / all)) / (2 * net.Units[a]))];
        MeanRun = Enumerable.Range(0, net.Count).Where(a => net.Attended[a]).Select(a => net[a].SetUp + works[a] + net[a].PutAway).DefaultIfEmpty(1).Average();
        sessionHalf = Math.Max(1, MeanRun);
        sessionCost = [.. net.Problem.Tools.Select(t => t.CloseDown.Zip(t.Fill, (close, fill) => (double)(close + fill)).DefaultIfEmpty(0).Average())];
        StateSize = (PerWorker * net.Problem.Workers.Length) + (PerTool * ToolStart[^1]);
        HoldWeights = new double[net.Offset[^1]];
        foreach (var wait in net.Problem.Waits.Where(w => w.HoldWeight > 0))
            AddHold(wait);
        for (var a = 0; a < net.Count; a++)
        {
            if (net.Done[a] > 0)
                PastFinish = Math.Max(PastFinish, net[a].Past[^1].WorkEnd + net[a].Unattended);
        }

        Forward = [.. Enumerable.Range(0, net.Count).Select(a => net.Out[a].Where(arc => Rank[arc.From] < Rank[arc.To]).ToArray())];
        // what is done has no run of its own that could look back at what it should have waited for
        Back = [.. Enumerable.Range(0, net.Count).Select(a => net.Out[a].Where(arc => Rank[arc.From] >= Rank[arc.To] || net.Done[arc.To] > 0).ToArray())];
        if (net.Count > MostInTable)
            return;
        words = (net.Count + 63) / 64;
        before = new ulong[(long)net.Count * words];
        for (var a = 0; a < net.Count; a++)
        {
            before[(a * words) + (a / 64)] |= 1UL << (a % 64);
            foreach (var arc in Forward[a])
                before[(a * words) + (arc.To / 64)] |= 1UL << (arc.To % 64);
        }
    }

    public Net Net { get; }

    /// <summary>An order of the activities in which only waits of tied groups point backwards.</summary>
    public int[] Rank { get; }

    /// <summary>Arcs out of an activity to a later one: in a sequence, the other end comes after it.</summary>
    public Arc[][] Forward { get; }

    /// <summary>Per activity, all that greatest waits tie together with it, itself included; none if nothing is.</summary>
    public int[][] Tied { get; }

    /// <summary>Whether there are several tools alike.</summary>
    public bool HasAlike { get; }

    /// <summary>Arcs out of an activity to an earlier one, or one partly done: they can only be kept by holding the other end back, if at all.</summary>
    public Arc[][] Back { get; }

    public OpenTime Clock { get; }

    public long[][] ReadingAtOpening { get; }

    /// <summary>
    /// What one unit of an activity counts in the mean completion: half by its work, half by its activity alone,
    /// so that parting a lot changes nothing by itself.
    /// </summary>
    public double[] CompletionWeight { get; }

    public Haste Haste { get; }

    /// <summary>Attended ticks of a mean lot in one run.</summary>
    public double MeanRun { get; }

    /// <summary>Where a tool's numbers begin among all tools.</summary>
    public int[] ToolStart { get; }

    public int StateSize { get; }

    /// <summary>By how much a later start of a unit adds to the holds.</summary>
    public double[] HoldWeights { get; }

    public long PastFinish { get; } = long.MinValue / 4;

    /// <summary>
    /// What it costs that a tool's use in one open interval grows from some ticks to more: little used, it is dear, so that
    /// what is left of a session goes over to a longer one and the session is saved.
    /// </summary>
    public double Session(int tool, long before, long after) =>
        sessionCost[tool] * (((double)after / (after + sessionHalf)) - ((double)before / (before + sessionHalf)));

    /// <summary>Whether the one run has to stay before the other in a sequence.</summary>
    public bool MustPrecede(in Slot x, in Slot y)
    {
        if (x.Units == 0 || y.Units == 0)
            return false;
        if (before is not null && (before[(x.Activity * words) + (y.Activity / 64)] & (1UL << (y.Activity % 64))) == 0)
            return false;
        if (x.Activity == y.Activity)
            return x.First < y.First;
        foreach (var arc in Forward[x.Activity])
        {
            if (arc.To != y.Activity)
                continue;
            if (arc.Whole ? x.First + x.Units == Net.Units[x.Activity] && y.First == Net.Done[y.Activity] : x.First < y.First + y.Units && y.First < x.First + x.Units)
                return true;
        }

        return false;
    }

    /// <summary>What every worker and tool is about before the first run.</summary>
    public long[] FirstState()
    {
        var state = new long[StateSize];
        var workers = Net.Problem.Workers.Length;
        for (var w = 0; w < workers; w++)
            state[w * PerWorker] = long.MinValue / 4;
        for (var t = 0; t < ToolStart[^1]; t++)
        {
            state[(workers * PerWorker) + (t * PerTool)] = -1;
            state[(workers * PerWorker) + (t * PerTool) + 1] = long.MinValue / 4;
            state[(workers * PerWorker) + (t * PerTool) + 2] = -1;
            state[(workers * PerWorker) + (t * PerTool) + 3] = long.MinValue / 4;
        }

        foreach (var run in Net.Problem.Activities.SelectMany(a => a.Past).OrderBy(r => r.Start))
        {
            if (run.Worker < 0)
                continue;
            var w = run.Worker * PerWorker;
            var open = Net.Open[run.Worker];
            var day = Array.FindIndex(open, o => run.Start < o.End && (o.Start <= run.Start || run.End > o.Start));
            if (run.End > state[w])
                state[w] = run.End;
            for (var d = day; d >= 0 && d < open.Length && open[d].Start < run.End; d++)
            {
                var isSameDay = Net.Day[run.Worker][d] == Net.Day[run.Worker][state[w + 1]];
                if (d > state[w + 1])
                    (state[w + 1], state[w + 3], isSameDay) = (d, isSameDay ? state[w + 3] : 0, true);
                if (isSameDay)
                    state[w + 3] += Math.Min(run.End, open[d].End) - Math.Max(run.Start, open[d].Start);
            }

            if (run.ToolNumber < 0 || Net.Tool[run.Activity] < 0)
                continue;
            var t = (workers * PerWorker) + ((ToolStart[Net.Tool[run.Activity]] + run.ToolNumber) * PerTool);
            state[t] = Net.Load[run.Activity];
            state[t + 1] = run.End;
            state[t + 2] = -1; // a fact has nobody who must close it down
            state[t + 3] = day >= 0 && open[day].Start <= run.Start ? open[day].End : run.End;
        }

        return state;
    }

    private void AddHold(Wait wait)
    {
        var from = Net.Offset[wait.From];
        var to = Net.Offset[wait.To];
        if (wait.Scope == Scope.WholeLot)
        {
            HoldWeights[from] -= wait.HoldWeight;
            HoldWeights[to + Net.Units[wait.To] - 1] += wait.HoldWeight;
            return;
        }

        for (var k = 0; k < Net.Units[wait.From]; k++)
        {
            HoldWeights[from + k] -= wait.HoldWeight;
            HoldWeights[to + k] += wait.HoldWeight;
        }
    }
}
