using Pipeline.Abstractions;

namespace Pipeline.Planning;

/// <summary>Due times the plan misses: what is late, by how much, and why.</summary>
internal static class Lateness
{
    /// <summary>One error for each due time in the file that is missed, with the day that can be promised instead.</summary>
    public static IEnumerable<Finding> Of(Timetable table)
    {
        var because = new Because(table);
        var late = new List<(int Activity, Workflows.Due Due, long Ready, long By)>();
        foreach (var due in table.Posed.Problem.Dues)
        {
            var ready = table.Start(due.Activity, 0);
            if (ready > due.By)
                late.Add((due.Activity, table.RouteOf(due.Activity).Route.Due!, ready, due.By));
        }

        foreach (var same in late.GroupBy(l => l.Due.Place).OrderBy(group => group.Key))
        {
            var worst = same.MaxBy(l => l.Ready);
            var models = same.Select(l => table.RouteOf(l.Activity).Route.Model.Name).ToList();
            // the bound is that of the last finish of all: it proves something only where everything is due by then
            var isAllDue = table.Posed.Activities.Count(posed => posed.Step is null) == table.Posed.Problem.Dues.Count(due => due.By <= worst.By);
            var proved = isAllDue && table.Planned.Bound.Finish > worst.By ? " No plan with these sittings can do it all in time." : "";
            yield return new Finding
            {
                Level = Level.Error,
                Place = same.Key,
                Model = models.Count == 1 ? models[0] : null,
                Message = $"{Phrases.Listed(models)} cannot be done by {table.Said(worst.By)}: the earliest found is {table.Said(worst.Ready)}, "
                    + $"{Phrases.Duration(Clock.Minutes(worst.Ready - worst.By))} late.{proved} {Last(table, worst.Activity, because)}",
                Remedy = "Add a sitting, begin earlier, move the due time, leave less of each sitting free ('slack' at the bench), or plan at a brisk pace and read what it risks.",
                Related = same.Select(l => new Related(table.RouteOf(l.Activity).Route.Model.Place, $"ready {table.Said(l.Ready)}")).ToSequence(),
            };
        }
    }

    // The last thing the model waits for, and what keeps that from being earlier.
    private static string Last(Timetable table, int ready, Because because)
    {
        var r = table.Posed.Activities[ready].Route;
        var last = Enumerable.Range(0, table.Runs.Count)
            .Where(run => table.Posed.Activities[table.Runs[run].Activity] is { Step: not null } posed && posed.Route == r)
            .MaxBy(run => table.Runs[run].End);
        return $"Last comes {because.Name(last, last)}, {table.Said(table.Runs[last].Start)}. {because.Of(last)}";
    }
}
