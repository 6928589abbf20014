using System.Collections.Immutable;

namespace Pipeline.Scheduling;

/// <summary>Reads off a finished schedule, however it was found, what keeps each run from starting earlier.</summary>
internal sealed class Explanation
{
    private readonly Net net;
    private readonly ImmutableArray<Run> runs;
    private readonly ImmutableArray<CloseDown> closeDowns;
    private readonly HashSet<int> past = [];
    private readonly int[] runOf;
    private readonly long[] starts;
    private readonly List<int>[] byWorker;
    private readonly Crowding crowding;
    private readonly Waiting waiting;
    private readonly HoursBefore hoursBefore;
    private readonly Dictionary<(int Tool, int Number), List<int>> byTool = [];

    /// <param name="net">The problem.</param>
    /// <param name="schedule">What is to be explained.</param>
    public Explanation(Net net, Schedule schedule)
    {
        this.net = net;
        runs = schedule.Runs;
        closeDowns = schedule.CloseDowns;
        runOf = new int[net.Offset[^1]];
        starts = new long[runOf.Length];
        byWorker = [.. net.Problem.Workers.Select(_ => new List<int>())];
        for (var r = 0; r < runs.Length; r++)
        {
            var run = runs[r];
            if (run.FirstUnit < net.Done[run.Activity])
                past.Add(r);
            for (var k = 0; k < run.Units; k++)
            {
                runOf[net.Offset[run.Activity] + run.FirstUnit + k] = r;
                starts[net.Offset[run.Activity] + run.FirstUnit + k] = run.WorkStart + (k * net.Step[run.Activity]);
            }

            if (run.Worker >= 0)
                byWorker[run.Worker].Add(r);
            if (run.ToolNumber >= 0 && net.Tool[run.Activity] >= 0)
            {
                var key = (net.Tool[run.Activity], run.ToolNumber);
                if (!byTool.TryGetValue(key, out var list))
                    byTool[key] = list = [];
                list.Add(r);
            }
        }

        crowding = new Crowding(net, runs);
        waiting = new Waiting(net, runs, runOf, starts);
        hoursBefore = new HoursBefore(net, schedule, byWorker, waiting, crowding.At);
        Reasons = [.. Enumerable.Range(0, runs.Length).Select(Why)];
    }

    /// <summary>One per run.</summary>
    public ImmutableArray<Reason> Reasons { get; }

    /// <summary>From the first cause to the run that finishes last.</summary>
    public ImmutableArray<int> CriticalRuns()
    {
        if (runs.Length == 0)
            return [];
        var at = Enumerable.Range(0, runs.Length).MaxBy(r => (FinishOf(r), -r));
        var chain = new List<int> { at };
        var seen = new HashSet<int> { at };
        while (Before(Reasons[at]) is { } before && seen.Add(before))
            chain.Add(at = before);
        chain.Reverse();
        return [.. chain];
    }

    /// <summary>When each activity finishes, and the slack it has.</summary>
    public ImmutableArray<ActivityFinish> Finishes()
    {
        var finish = new long[net.Count];
        for (var a = 0; a < net.Count; a++)
            finish[a] = starts[net.Offset[a + 1] - 1] + net.Duration[a];
        var last = finish.Length == 0 ? 0 : finish.Max();
        var slack = new long[net.Count];
        for (var a = 0; a < net.Count; a++)
        {
            slack[a] = last - finish[a];
            foreach (var arc in net.Out[a])
            {
                if (arc.To == a)
                    continue;
                if (arc.Whole)
                    slack[a] = Math.Min(slack[a], starts[net.Offset[arc.To]] - starts[net.Offset[a + 1] - 1] - arc.Lag);
                else
                {
                    for (var k = 0; k < net.Units[a]; k++)
                        slack[a] = Math.Min(slack[a], starts[net.Offset[arc.To] + k] - starts[net.Offset[a] + k] - arc.Lag);
                }
            }
        }

        foreach (var due in net.Problem.Dues)
            slack[due.Activity] = Math.Min(slack[due.Activity], due.By - due.Afterwards - finish[due.Activity]);
        return [.. Enumerable.Range(0, net.Count).Select(a => new ActivityFinish(a, finish[a], Math.Max(0, slack[a])))];
    }

    private static int? Before(Reason reason) => reason switch
    {
        Reason.Waits waits => waits.Run,
        Reason.UnitOrder order => order.Run,
        Reason.WorkerBusy busy => busy.Run,
        Reason.ClosingDown closing => closing.Run,
        Reason.ToolHeld held => held.Run,
        Reason.PlaceFull full => full.Run,
        Reason.ReadyTooLate late => late.Wait.Run,
        Reason.HadItsShare share => share.Run,
        Reason.Closed { Run: >= 0 } closed => closed.Run,
        _ => null,
    };

    private long FinishOf(int r) => starts[net.Offset[runs[r].Activity] + runs[r].FirstUnit + runs[r].Units - 1] + net.Duration[runs[r].Activity];

    private Reason Why(int r)
    {
        var run = runs[r];
        var a = run.Activity;
        if (past.Contains(r))
            return new Reason.Fact();
        if (net.PinnedStart[a] is not null)
            return new Reason.Pinned();
        var (least, tied) = (waiting.Least(r), waiting.Tied(r));
        if ((tied.At > least.At ? tied : least) is { Waits: { } waits } last && last.At >= run.WorkStart)
            return waits;
        if (UnitBefore(run) is var (before, end) && end >= run.WorkStart)
            return new Reason.UnitOrder(before);
        if (net[a].NotBefore >= run.Start)
            return new Reason.NotBefore();
        if (LastEndingAt(run.ToolNumber < 0 ? [] : byTool[(net.Tool[a], run.ToolNumber)], r) is { } user && runs[user].Worker != run.Worker)
            return new Reason.ToolHeld(net.Tool[a], user);
        if (run.Worker >= 0 && LastEndingAt(byWorker[run.Worker], r) is { } other)
            return new Reason.WorkerBusy(run.Worker, other);
        if (ClosingDownBefore(run) is { } closing)
            return closing;
        if (crowding.Until(r) is { } full)
            return full;
        return run.Worker >= 0 ? hoursBefore.Why(r, UnitBefore(run)) : new Reason.Nothing();
    }

    // The units go through one after the other: the run of the one before its first, and from when on that lets the next one start.
    private (int Run, long End)? UnitBefore(Run run)
    {
        var unit = net.Offset[run.Activity] + run.FirstUnit - 1;
        return run.FirstUnit > 0 ? (runOf[unit], starts[unit] + net.Step[run.Activity]) : null;
    }

    // The run of the list that ends exactly when this one starts.
    private int? LastEndingAt(List<int> sorted, int r)
    {
        for (var i = sorted.IndexOf(r) - 1; i >= 0; i--)
        {
            if (runs[sorted[i]].End == runs[r].Start)
                return sorted[i];
            if (runs[sorted[i]].End < runs[r].Start)
                return null;
        }

        return null;
    }

    private Reason.ClosingDown? ClosingDownBefore(Run run)
    {
        for (var c = 0; c < closeDowns.Length; c++)
        {
            var close = closeDowns[c];
            if (close.Worker == run.Worker && close.Start + close.Ticks == run.Start)
                return new Reason.ClosingDown(c, byTool[(close.Tool, close.ToolNumber)].FindLast(user => runs[user].End <= close.Start));
        }

        return null;
    }
}
