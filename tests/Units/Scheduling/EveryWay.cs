using System.Collections.Immutable;
using Pipeline.Scheduling;

namespace Pipeline.Tests.Scheduling;

/// <summary>
/// A few single steps for two painters with an airbrush or two alike, tried in every way: whoever does what, with which airbrush and
/// from which tick. What is left in an airbrush is followed as the words of <see cref="Tool"/> have it, and the auditor has the last word.
/// </summary>
internal sealed class EveryWay
{
    private const long Last = 20;

    private readonly Problem problem;
    private readonly List<Run> runs = [];

    private EveryWay(Problem problem) => this.problem = problem;

    /// <summary>The earliest finish found so far.</summary>
    private long? Finish { get; set; }

    public static long? EarliestFinish(Problem problem)
    {
        var ways = new EveryWay(problem);
        ways.GoOn();
        return ways.Finish;
    }

    /// <summary>The same seed gives the same problem.</summary>
    public static Problem Next(int seed)
    {
        var random = new Random(seed);
        ImmutableArray<ImmutableArray<long>> cleanOut = [[0, random.Next(0, 3)], [random.Next(0, 3), 0]];
        ImmutableArray<long> fill = [random.Next(0, 2), random.Next(0, 2)];
        ImmutableArray<long> closeDown = [random.Next(0, 3), random.Next(0, 3)];
        return new Problem
        {
            Workers = [Painter("one"), Painter("other")],
            Tools = [new Tool("airbrush", random.Next(1, 3), ["black", "white"], cleanOut, fill, closeDown)],
            Activities = [.. Enumerable.Range(0, 3).Select(i => new Activity
            {
                Name = $"{i}",
                PerUnit = random.Next(1, 4),
                SetUp = random.Next(0, 2),
                PutAway = random.Next(0, 2),
                Unattended = random.Next(0, 3),
                Workers = random.Next(4) switch { 0 => [0], 1 => [1], _ => [] },
                Tool = random.Next(4) == 0 ? null : new ToolUse(0, random.Next(2)),
            })],
            Waits = [.. Enumerable.Range(1, 2).Where(_ => random.Next(2) == 0)
                .Select(i => new Wait(i - 1, Edge.Finish, i, Edge.Start, random.Next(0, 3), random.Next(2) == 0 ? random.Next(3, 6) : null))],
            Aims = [Aim.FinishSoon],
        };

        Worker Painter(string name)
        {
            long first = random.Next(0, 4);
            long second = random.Next(11, 14);
            return new Worker(name, new Calendar([new Interval(first, first + random.Next(5, 8)), new Interval(second, second + random.Next(5, 8))]));
        }
    }

    private void GoOn()
    {
        if (runs.Count == problem.Activities.Length)
        {
            if (CloseDowns([.. runs.Where(IsLeft)], []) is { } closes)
            {
                Auditor.Audit(problem, new Schedule([.. runs], [.. closes])).Should().BeEmpty();
                Finish = runs.Max(FinishOf);
            }

            return;
        }

        for (var a = 0; a < problem.Activities.Length; a++)
        {
            if (runs.Exists(r => r.Activity == a))
                continue;
            for (var w = 0; w < problem.Workers.Length; w++)
            {
                for (var number = 0; number < (problem.Activities[a].Tool is null ? 1 : problem.Tools[0].Count); number++)
                {
                    for (var start = runs.Count == 0 ? 0 : runs[^1].Start; start < Last && (Finish is null || start < Finish); start++)
                        Try(a, w, number, start);
                }
            }
        }
    }

    // In order of start.
    private void Try(int a, int w, int number, long start)
    {
        var activity = problem.Activities[a];
        var before = activity.Tool is null ? null : runs.LastOrDefault(r => r.ToolNumber == number);
        if (before?.End > start || runs.Exists(r => r.Worker == w && r.End > start) || !(activity.Workers.IsEmpty || activity.Workers.Contains(w)))
            return;
        var cleanOut = activity.Tool is not { } use ? 0
            : before is null || start >= LeftAt(before) ? problem.Tools[0].Fill[use.Load]
            : problem.Tools[0].CleanOut[problem.Activities[before.Activity].Tool!.Load][use.Load];
        var run = new Run(a, 0, 1, w, activity.Tool is null ? -1 : number, start, cleanOut, activity.SetUp, activity.PerUnit, activity.PutAway);
        if (!problem.Workers[w].Open.Open.Any(o => o.Start <= run.Start && run.End <= o.End) || FinishOf(run) >= Finish)
            return;
        runs.Add(run);
        if (problem.Waits.All(IsKept))
            GoOn();
        runs.RemoveAt(runs.Count - 1);
    }

    private bool IsKept(Wait wait)
    {
        if (runs.Find(r => r.Activity == wait.To) is not { } to)
            return true;
        // the earlier of the two is begun first
        return runs.Find(r => r.Activity == wait.From) is { } from
            && to.WorkStart >= FinishOf(from) + wait.Least && (wait.Greatest is null || to.WorkStart <= FinishOf(from) + wait.Greatest);
    }

    private long FinishOf(Run run) => run.WorkStart + problem.Activities[run.Activity].PerUnit + problem.Activities[run.Activity].Unattended;

    private long LeftAt(Run run) => problem.Workers[run.Worker].Open.Open.First(o => o.Start <= run.Start && run.Start < o.End).End;

    private bool IsLeft(Run run) => run.ToolNumber >= 0 && Closing(run) > 0
        && !runs.Exists(r => r.ToolNumber == run.ToolNumber && r.Start > run.Start && r.Start < LeftAt(run));

    private long Closing(Run run) => problem.Tools[0].CloseDown[problem.Activities[run.Activity].Tool!.Load];

    private List<CloseDown>? CloseDowns(Run[] left, List<CloseDown> closes)
    {
        if (left is not [var run, .. var rest])
            return closes;
        var ticks = Closing(run);
        for (var start = run.End; start + ticks <= LeftAt(run); start++)
        {
            if (runs.Exists(r => r.Worker == run.Worker && r.Start < start + ticks && start < r.End)
                || closes.Exists(c => c.Worker == run.Worker && c.Start < start + ticks && start < c.Start + c.Ticks))
                continue;
            var close = new CloseDown(0, run.ToolNumber, problem.Activities[run.Activity].Tool!.Load, run.Worker, start, ticks);
            if (CloseDowns(rest, [.. closes, close]) is { } all)
                return all;
        }

        return null;
    }
}
