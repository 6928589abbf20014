using Pipeline.Scheduling;

namespace Pipeline.Planning;

/// <summary>What the time of a chain goes to, in ticks.</summary>
internal sealed class ChainTime
{
    private readonly Timetable table;
    private readonly Because because;
    private readonly IReadOnlyList<int> chain;

    /// <param name="table">The plan.</param>
    /// <param name="because">Its reasons.</param>
    /// <param name="chain">Runs, each held back by the one before it.</param>
    /// <param name="ready">The model at the end of the chain, by its own activity.</param>
    public ChainTime(Timetable table, Because because, IReadOnlyList<int> chain, int ready)
    {
        (this.table, this.because, this.chain) = (table, because, chain);
        var drying = 0L;
        for (var i = 0; i < chain.Count; i++)
        {
            var run = table.Runs[chain[i]];
            Hands += run.Worker >= 0 ? run.End - run.Start : 0;
            var alone = run.Worker >= 0 ? 0 : FinishOf(run) - run.Start;
            var waited = Waited(i);
            drying += alone + waited;
            if (Math.Max(alone, waited) is > 0 and var ticks && ticks > (Longest?.Ticks ?? 0))
                Longest = (chain[i], ticks);
        }

        // what dries after the last task
        drying += Math.Max(0, table.ReadyAt(ready) - Math.Max(table.Runs[chain[^1]].End, FinishOf(table.Runs[chain[^1]])));
        Span = table.ReadyAt(ready) - table.Runs[chain[0]].Start;
        Drying = Math.Min(drying, Span - Hands);
    }

    /// <summary>From the start of the first task until the model is ready.</summary>
    public long Span { get; }

    /// <summary>With hands at work.</summary>
    public long Hands { get; }

    /// <summary>For which something dries or runs by itself besides.</summary>
    public long Drying { get; }

    /// <summary>The longest stretch of that: what runs by itself, or what waits; null if there is none.</summary>
    public (int Run, long Ticks)? Longest { get; }

    /// <summary>Time between the task before and this one of the chain in which it had to wait for the other's layer.</summary>
    public long Waited(int at)
    {
        if (at == 0 || because.WaitBefore(chain[at]) is not { Least: { } least } wait || wait.From != table.Runs[chain[at - 1]].Activity)
            return 0;
        var before = table.Runs[chain[at - 1]];
        var since = table.At(wait.From, before.FirstUnit + before.Units - 1, wait.FromEdge);
        return Math.Max(0, Math.Min(since + least, table.Runs[chain[at]].WorkStart) - before.End);
    }

    private long FinishOf(Run run) => table.Finish(run.Activity, run.FirstUnit + run.Units - 1);
}
