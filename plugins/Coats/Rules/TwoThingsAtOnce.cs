using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>Steps with decided times ask for more hands or tools than there are.</summary>
public sealed class TwoThingsAtOnce : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Nobody and no tool does two attended things at once.";

    /// <inheritdoc/>
    public override IEnumerable<BatchVerdict> JudgeBatch(BatchView batch)
    {
        var tasks = new List<Task>();
        foreach (var start in batch.Starts)
        {
            if (Attended(batch, start) is { Minutes: > 0 } task)
                tasks.Add(task);
        }

        tasks.Sort((left, right) => left.Start != right.Start ? left.Start.CompareTo(right.Start) : left.Order.CompareTo(right.Order));
        for (var i = 0; i < tasks.Count; i++)
        {
            var busy = tasks.Take(i).Where(earlier => earlier.End > tasks[i].Start && !IsInTurn(earlier, tasks[i])).ToList();
            var sameTool = busy.Where(earlier => earlier.Moment.Step.Work.Tool is { } tool && tool == tasks[i].Moment.Step.Work.Tool).ToList();
            if (ToolCount(batch, tasks[i].Moment.Step.Work.Tool) is { } count && sameTool.Count >= count)
                yield return Clash(tasks[i], sameTool[0], $"the {tasks[i].Moment.Step.Work.Tool} is in use", "Stagger the two, or use another tool.");
            else if (busy.Count >= batch.Painters)
                yield return Clash(tasks[i], busy[0], batch.Painters == 1 ? "the painter's hands are busy" : "all hands are busy", "Stagger the two: move one of the times.");
        }
    }

    // of steps of one piece that come one after the other anyway, the rules about their times speak
    private static bool IsInTurn(Task earlier, Task task)
    {
        if (earlier.At.Route != task.At.Route)
            return false;
        var reachesWide = IsWide(earlier.Moment.Step) || IsWide(task.Moment.Step);
        // a join later than one of the two orders them by itself
        var before = Math.Min(earlier.At.Step, task.At.Step);
        foreach (var area in earlier.Moment.Step.Areas)
        {
            if (task.Moment.Step.Areas.Contains(area) || (reachesWide && task.Moment.Pieces.IsBeside(area, task.Moment.Step.Areas, before)))
                return true;
        }

        return false;
    }

    private static bool IsWide(Step step) => step.Kind is StepKind.Masking or StepKind.Removal || step.Coat()?.IsSprayed() == true;

    private static Task? Attended(BatchView batch, DecidedStart start)
    {
        var route = batch.Routes[start.At.Route];
        var moment = route.Moments[start.At.Step];
        // of several coats that dry between, only the first has a decided time
        return new Task(start.At, moment, start.Start, moment.Step.Work.PassOver(route.Model.Count).Minutes);
    }

    private static int? ToolCount(BatchView batch, string? tool)
    {
        foreach (var listed in batch.Tools)
        {
            if (listed.Tool == tool)
                return listed.Count;
        }

        return null;
    }

    private static BatchVerdict Clash(Task task, Task earlier, string why, string remedy) => new()
    {
        Level = Level.Error,
        Place = task.Moment.Step.Place,
        Step = task.At,
        Areas = task.Moment.Step.Areas,
        Message = FormattableString.Invariant(
            $"At {task.Start:yyyy-MM-dd HH:mm} {why} until {earlier.End:HH:mm} with '{earlier.Moment.Step.Verb}' of {earlier.Moment.Model.Name}."),
        Remedy = remedy,
        Related = [new Related(earlier.Moment.Step.Place, FormattableString.Invariant($"begins at {earlier.Start:HH:mm} and takes {earlier.Minutes:0} min"))],
    };

    private sealed record Task(StepInBatch At, Moment Moment, DateTime Start, double Minutes)
    {
        public DateTime End => Start.AddMinutes(Minutes);

        public (int, int) Order => (At.Route, At.Step);
    }
}
