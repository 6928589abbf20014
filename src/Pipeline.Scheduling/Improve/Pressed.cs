namespace Pipeline.Scheduling;

/// <summary>
/// A schedule with everything as early as it can be in its sitting and in the order it has: a search for the last finish does not
/// care when anything else is done. For problems that the exact model covers. What is pinned or takes places stays where it is.
/// </summary>
internal sealed class Pressed
{
    private readonly Net net;
    private readonly long[] starts;
    private readonly Dictionary<int, long> free = [];

    // since the last use of a tool: when it was over, and the open interval of whoever had it
    private readonly Dictionary<(int Tool, int Number), (long End, long LeftAt)> used = [];

    private Pressed(Net net, Schedule schedule)
    {
        this.net = net;
        starts = new long[net.Offset[^1]];
        foreach (var run in schedule.Runs)
            Note(run);
    }

    public static Schedule Of(Net net, Schedule schedule)
    {
        var pressed = new Pressed(net, schedule);
        var runs = new List<Run>();
        var closes = new List<CloseDown>();
        var runBlocks = schedule.Runs.Select(r => (r.Start, r.End, Run: (Run?)r, Close: (CloseDown?)null));
        var closeBlocks = schedule.CloseDowns.Select(c => (c.Start, End: c.Start + c.Ticks, Run: (Run?)null, Close: (CloseDown?)c));
        foreach (var (_, _, run, close) in runBlocks.Concat(closeBlocks).OrderBy(b => b.Start).ThenBy(b => b.End).ThenBy(b => b.Close is null))
        {
            if (run is not null)
                runs.Add(pressed.Press(run));
            else
                closes.Add(pressed.Press(close!));
        }

        return new Schedule(
            [.. runs.OrderBy(r => r.Start).ThenBy(r => r.Activity).ThenBy(r => r.FirstUnit)],
            [.. closes.OrderBy(c => c.Start)]);
    }

    private Run Press(Run run)
    {
        var a = run.Activity;
        var isPast = run.FirstUnit < net.Done[a];
        var was = run.Start;
        if (!isPast && net.PinnedStart[a] is null && net.Stays[a].Length == 0)
        {
            // of what comes later it is known where it was, and that can only become earlier
            var work = Placing.WorkFrom(net, starts, a, run.FirstUnit, run.Units);
            var start = Math.Max(net[a].NotBefore, work - run.SetUp - run.CleanOut);
            if (run.Worker >= 0)
                start = Math.Max(start, Math.Max(Opening(run.Worker, run.Start), free.GetValueOrDefault(run.Worker, long.MinValue)));
            if (net.Tool[a] >= 0 && used.TryGetValue((net.Tool[a], run.ToolNumber), out var last))
                start = Math.Max(start, was < last.LeftAt ? last.End : last.LeftAt);
            run = run with { Start = Math.Min(run.Start, start) };
            Note(run);
        }

        if (run.Worker >= 0)
            free[run.Worker] = Math.Max(free.GetValueOrDefault(run.Worker, long.MinValue), run.End);
        if (net.Tool[a] >= 0)
            used[(net.Tool[a], run.ToolNumber)] = (run.End, Math.Max(run.End, Closing(run.Worker, was)));
        return run;
    }

    private CloseDown Press(CloseDown close)
    {
        close = close with { Start = Math.Min(close.Start, Math.Max(Opening(close.Worker, close.Start), free.GetValueOrDefault(close.Worker, long.MinValue))) };
        free[close.Worker] = close.Start + close.Ticks;
        return close;
    }

    private void Note(Run run)
    {
        for (var k = 0; k < run.Units; k++)
            starts[net.Offset[run.Activity] + run.FirstUnit + k] = run.WorkStart + (k * net.Step[run.Activity]);
    }

    // what has happened may have been outside all hours
    private long Closing(int worker, long at) => worker < 0 ? at : net.Open[worker].Where(o => o.Start <= at && at < o.End).Select(o => o.End).DefaultIfEmpty(at).First();

    private long Opening(int worker, long at) => net.Open[worker].Last(o => o.Start <= at).Start;
}
