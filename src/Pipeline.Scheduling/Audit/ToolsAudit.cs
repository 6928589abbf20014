namespace Pipeline.Scheduling;

/// <summary>
/// Each tool in one pair of hands at a time, cleaned out as the loads ask, and never left loaded beyond the open interval
/// of whoever used it last. What a past run left behind is taken as closed down by the end of that interval.
/// </summary>
internal static class ToolsAudit
{
    private sealed record Event(long Start, long End, Run? Run, CloseDown? CloseDown);

    public static void Run(Problem problem, Schedule schedule, HashSet<Run> judged, List<Fault> faults)
    {
        var uses = new Dictionary<(int Tool, int Number), List<Event>>();
        foreach (var run in schedule.Runs)
        {
            if (problem.Activities[run.Activity].Tool is not { } use)
                continue;
            if (run.ToolNumber < 0 || run.ToolNumber >= problem.Tools[use.Tool].Count)
                faults.Add(new Fault(FaultKind.Figures, $"'{problem.Activities[run.Activity].Name}' at {run.Start} has no tool."));
            else
                Of(use.Tool, run.ToolNumber).Add(new Event(run.Start, run.End, run, null));
        }

        foreach (var close in schedule.CloseDowns)
        {
            if (close.Tool < 0 || close.Tool >= problem.Tools.Length || close.ToolNumber < 0 || close.ToolNumber >= problem.Tools[close.Tool].Count)
                faults.Add(new Fault(FaultKind.CloseDown, $"The close-down at {close.Start} names no tool."));
            else
                Of(close.Tool, close.ToolNumber).Add(new Event(close.Start, close.Start + close.Ticks, null, close));
        }

        foreach (var ((tool, number), events) in uses)
        {
            events.Sort((x, y) => x.Start != y.Start ? x.Start.CompareTo(y.Start) : x.End.CompareTo(y.End));
            Follow(problem, problem.Tools[tool], number, events, judged, faults);
        }

        List<Event> Of(int tool, int number)
        {
            if (!uses.TryGetValue((tool, number), out var list))
                uses[(tool, number)] = list = [];
            return list;
        }
    }

    private static void Follow(Problem problem, Tool tool, int number, List<Event> events, HashSet<Run> judged, List<Fault> faults)
    {
        Run? last = null; // the run that left the tool loaded
        var closedUntil = long.MinValue;
        var busyUntil = long.MinValue;
        foreach (var now in events)
        {
            var isJudged = now.Run is null || judged.Contains(now.Run);
            if (isJudged && now.Start < busyUntil)
                faults.Add(new Fault(FaultKind.ToolTwice, $"{tool.Name} {number} is in use until {busyUntil} and taken again at {now.Start}."));
            busyUntil = Math.Max(busyUntil, now.End);
            if (last is not null && now.Start >= LeftAt(problem, last))
            {
                LeftLoaded(last);
                last = null;
            }

            if (now.Run is { } run)
            {
                if (isJudged && run.Start < closedUntil)
                    faults.Add(new Fault(FaultKind.CloseDown, $"{tool.Name} {number} was closed down until {closedUntil} and is taken up again at {run.Start}."));
                var load = problem.Activities[run.Activity].Tool!.Load;
                var needed = last is null ? tool.Fill[load] : tool.CleanOut[problem.Activities[last.Activity].Tool!.Load][load];
                if (isJudged && run.CleanOut != needed)
                    faults.Add(new Fault(FaultKind.CleanOut, $"{tool.Name} {number} at {run.Start}: clean-out of {run.CleanOut} ticks instead of {needed}."));
                last = run;
            }
            else
            {
                var close = now.CloseDown!;
                if (last is null)
                    faults.Add(new Fault(FaultKind.CloseDown, $"{tool.Name} {number} is closed down at {close.Start} and holds nothing."));
                else
                {
                    Judge(last, close);
                    closedUntil = LeftAt(problem, last);
                }

                last = null;
            }
        }

        if (last is not null)
            LeftLoaded(last);

        void Judge(Run user, CloseDown close)
        {
            var load = problem.Activities[user.Activity].Tool!.Load;
            if (close.Worker != user.Worker || close.Load != load || close.Ticks != tool.CloseDown[load] || close.Start + close.Ticks > LeftAt(problem, user))
                faults.Add(new Fault(FaultKind.CloseDown, $"{tool.Name} {number} is closed down wrongly at {close.Start}."));
        }

        void LeftLoaded(Run user)
        {
            if (judged.Contains(user) && tool.CloseDown[problem.Activities[user.Activity].Tool!.Load] > 0)
                faults.Add(new Fault(FaultKind.CloseDown, $"{tool.Name} {number} is left loaded after the run at {user.Start}."));
        }
    }

    // The end of the open interval of the run's worker; a past run outside all hours leaves the tool at its own end.
    private static long LeftAt(Problem problem, Run run)
    {
        if (run.Worker < 0)
            return run.End;
        foreach (var open in problem.Workers[run.Worker].Open.Open)
        {
            if (open.Start <= run.Start && run.Start < open.End)
                return Math.Max(open.End, run.End);
        }

        return run.End;
    }
}
