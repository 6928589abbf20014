using System.Collections.Immutable;
using NodaTime;
using Pipeline.Scheduling;
using Pipeline.Surfaces;

namespace Pipeline.Planning;

/// <summary>
/// Work that has been done, as the past of a scheduling problem. Of each step and coat the pieces from the first on that the earlier plan had
/// done; what runs by itself went on as soon as it could.
/// </summary>
internal sealed class PastWork
{
    private readonly Walked walked;
    private readonly Clock clock;
    private readonly IReadOnlyList<PosedActivity> posed;
    private readonly IReadOnlyList<Tool> tools;
    private readonly Activity[] activities;
    private readonly HashSet<int> byHand = [];
    private readonly ILookup<int, Wait> waitsTo;
    private readonly ILookup<int, Wait> waitsFrom;

    private PastWork(Walked walked, Posed posed)
    {
        (this.walked, clock, this.posed, tools, activities) = (walked, posed.Clock, posed.Activities, posed.Problem.Tools, [.. posed.Problem.Activities]);
        var least = posed.Problem.Waits.Where(wait => wait.Least is not null).ToList();
        waitsTo = least.ToLookup(wait => wait.To);
        waitsFrom = least.ToLookup(wait => wait.From);
    }

    /// <summary>The batch with what has been done of its activities.</summary>
    /// <param name="done">The work.</param>
    /// <param name="walked">The batch.</param>
    /// <param name="posed">The batch as if nothing had been done.</param>
    public static Posed In(DoneWork done, Walked walked, Posed posed)
    {
        var past = new PastWork(walked, posed);
        past.ByHand(done, NamedActivities.Of(walked, posed.Routes));
        past.BeforeWhatIsDone();
        past.AfterWhatIsDone();
        return posed with { Problem = posed.Problem with { Activities = [.. past.activities] } };
    }

    private void ByHand(DoneWork done, IReadOnlyDictionary<(string Model, string Step, int Coat), int> named)
    {
        var known = done.Tasks.Select(task => (Task: task, At: named.TryGetValue((task.Model, task.Step, task.Coat), out var a) ? a : -1)).Where(each => each.At >= 0).ToList();
        var numbers = ToolNumbers(known);
        foreach (var mine in known.ToLookup(each => each.At, each => each.Task))
        {
            var a = mine.Key;
            var parts = new List<(WrittenTask Task, int ToolNumber)>();
            var next = 0;
            foreach (var task in mine.OrderBy(task => task.FirstUnit))
            {
                // only what hangs together from the first piece on, and only of pieces that there still are
                if (task.FirstUnit - 1 > next || task.After(next - (task.FirstUnit - 1)) is not { } rest || next == activities[a].Units)
                    continue;
                var part = rest.First(Math.Min(rest.Units, activities[a].Units - next));
                parts.Add((part, numbers.GetValueOrDefault(task, -1)));
                next += part.Units;
            }

            var activity = next == activities[a].Units ? Fitted(activities[a], parts) : activities[a];
            activities[a] = activity with { Past = [.. parts.Select(part => Run(a, activity, part.Task, part.ToolNumber))] };
            byHand.Add(a);
        }
    }

    // Which of several tools alike a step used is not told: one that was free, and held the same before if there was one.
    private Dictionary<WrittenTask, int> ToolNumbers(IEnumerable<(WrittenTask Task, int At)> known)
    {
        var numbers = new Dictionary<WrittenTask, int>();
        var taken = tools.Select(tool => new (int Load, Instant Until)[tool.Count]).ToList();
        foreach (var (task, at) in known.OrderBy(each => each.Task.Start))
        {
            if (activities[at].Tool is not { } use)
                continue;
            var mine = taken[use.Tool];
            var number = Enumerable.Range(0, mine.Length).OrderBy(n => mine[n].Until > task.Start).ThenBy(n => mine[n].Load != use.Load + 1).ThenBy(n => mine[n].Until).First();
            mine[number] = (use.Load + 1, task.End);
            numbers[task] = number;
        }

        return numbers;
    }

    // Where all is done it took as long as it took, whatever the file now says.
    private Activity Fitted(Activity activity, List<(WrittenTask Task, int ToolNumber)> parts) =>
        activity with { PerUnit = parts.Min(part => (clock.TickAt(part.Task.WorkEnd) - clock.TickAt(part.Task.WorkStart)) / (activity.Together ? 1 : part.Task.Units)) };

    // Its end is what later work waits for: with other figures in the file it is that which stays.
    private Run Run(int a, Activity activity, WrittenTask task, int toolNumber)
    {
        var (end, workEnd) = (clock.TickAt(task.End), clock.TickAt(task.WorkEnd));
        var work = activity.Together ? activity.PerUnit : task.Units * activity.PerUnit;
        var start = Math.Min(clock.TickAt(task.Start), workEnd - work);
        var painters = walked.Batch.Bench.Painters.Select(painter => painter.Name).ToList();
        return new Run(a, task.FirstUnit - 1, task.Units, painters.IndexOf(task.Painter), toolNumber, start, CleanOut: 0, SetUp: workEnd - work - start, work, PutAway: end - workEnd);
    }

    // No plan has a task for what needs no hands: it was over when what comes after it began.
    private void BeforeWhatIsDone()
    {
        for (var a = activities.Length - 1; a >= 0; a--)
        {
            if (activities[a].IsAttended || byHand.Contains(a) || posed[a].Step is null)
                continue;
            var starts = new List<long>();
            for (var k = 0; k < activities[a].Units; k++)
            {
                var after = waitsFrom[a].Where(wait => wait.Scope == Scope.UnitByUnit && IsDone(wait.To, k)).ToList();
                if (after.Count == 0)
                    break;
                var latest = after.Min(wait => At(wait.To, k, wait.ToEdge) - wait.Least!.Value - (wait.FromEdge == Edge.Finish ? Length(a) : 0));
                starts.Add(Ready(a, k) is { } ready ? Math.Min(ready, latest) : latest);
            }

            Put(a, starts);
        }
    }

    // What needs no hands begins as soon as it may; so is a model ready by itself.
    private void AfterWhatIsDone()
    {
        for (var a = 0; a < activities.Length; a++)
        {
            if (activities[a].IsAttended || byHand.Contains(a) || waitsTo[a].All(wait => wait.From == a))
                continue;
            var starts = activities[a].Past.Select(run => run.WorkStart).ToList();
            for (var k = starts.Count; k < activities[a].Units && Ready(a, k) is < 0 and var ready; k++)
                starts.Add(ready);
            Put(a, starts);
        }
    }

    private void Put(int a, List<long> starts)
    {
        var activity = activities[a];
        for (var k = 1; k < starts.Count; k++)
            starts[k] = Math.Max(starts[k], starts[k - 1]);
        // pieces done together went in together
        if (activity.Together && starts.Count > 0)
            activities[a] = activity with { Past = [new Run(a, 0, starts.Count, Worker: -1, ToolNumber: -1, starts[^1], CleanOut: 0, SetUp: 0, Work: 0, PutAway: 0)] };
        else
            activities[a] = activity with { Past = [.. starts.Select((start, k) => new Run(a, k, 1, Worker: -1, ToolNumber: -1, start, CleanOut: 0, SetUp: 0, Work: 0, PutAway: 0))] };
    }

    // When a piece could begin after all it waits for; null if some of that has not been done.
    private long? Ready(int a, int unit)
    {
        long? ready = null;
        foreach (var wait in waitsTo[a])
        {
            var from = wait.Scope == Scope.WholeLot ? activities[wait.From].Units - 1 : unit;
            if (!IsDone(wait.From, from))
                return null;
            var at = At(wait.From, from, wait.FromEdge) + wait.Least!.Value - (wait.ToEdge == Edge.Finish ? Length(a) : 0);
            ready = Math.Max(ready ?? at, at);
        }

        return ready;
    }

    private bool IsDone(int a, int unit) => unit < activities[a].Past.Sum(run => run.Units);

    private long Length(int a) => activities[a].PerUnit + activities[a].Unattended;

    private long At(int a, int unit, Edge edge)
    {
        var run = activities[a].Past.First(run => unit < run.FirstUnit + run.Units);
        return activities[a].StartIn(run, unit) + (edge == Edge.Finish ? Length(a) : 0);
    }
}
