using Pipeline.Abstractions;

namespace Pipeline.Planning;

/// <summary>Tools that still hold paint from the done part of a sitting under way, and are not taken up again in it.</summary>
internal static class LeftLoaded
{
    /// <summary>A note for each.</summary>
    public static IEnumerable<Finding> In(Timetable table)
    {
        var uses = Enumerable.Range(0, table.Runs.Count).Where(r => table.Posed.Problem.Activities[table.Runs[r].Activity].Tool is not null)
            .GroupBy(r => (table.Posed.Problem.Activities[table.Runs[r].Activity].Tool!.Tool, table.Runs[r].ToolNumber));
        foreach (var mine in uses)
        {
            var inOrder = mine.OrderBy(r => table.Runs[r].Start).ToList();
            var last = inOrder.FindLastIndex(table.IsPast);
            if (last < 0 || table.Runs[inOrder[last]] is not { Worker: >= 0 } run)
                continue;
            var sitting = table.Posed.Problem.Workers[run.Worker].Open.Open.FirstOrDefault(open => open.Start <= run.Start && run.Start < open.End);
            if (sitting.End <= 0 || (last + 1 < inOrder.Count && table.Runs[inOrder[last + 1]].Start < sitting.End))
                continue;
            var use = table.Posed.Problem.Activities[run.Activity].Tool!;
            if (table.Posed.Tools.Load(use.Tool, use.Load) is { } held)
            {
                yield return new Finding
                {
                    Level = Level.Note,
                    Place = table.StepOf(run.Activity)!.Place,
                    Model = table.RouteOf(run.Activity).Route.Model.Name,
                    Message = $"The {table.Posed.Tools.Names[use.Tool]} still holds {held.Name} from before {table.Said(0)}, and nothing more is sprayed in this sitting.",
                    Remedy = "Clean it out before you leave the bench; that is not in the plan.",
                };
            }
        }
    }
}
