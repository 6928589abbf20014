using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>
/// What a plan risks between the coats of one step: the planner lets none begin before the low figure, and one that begins before the
/// comfortable end is a warning. A step speaks once, of the unit and the coat that fare worst.
/// </summary>
internal static class CoatJudge
{
    // Times are exact to half a minute; a wait missed by less than this has been kept.
    private const double Tolerance = 1e-6;

    /// <summary>One finding for each step at which something is risked, in the order of the routes.</summary>
    public static IEnumerable<Finding> Of(Timetable table)
    {
        for (var r = 0; r < table.Posed.Routes.Length; r++)
        {
            foreach (var step in table.Walked.Routes[r].Route.Steps.Where(step => step.Work.Passes > 1))
            {
                var comfortable = Passing.Between(step, table.Batch.Bench, Pace.Comfortable);
                var (coat, unit, minutes) = Shortest(table, table.Posed.Routes[r].Of(step.Index));
                if (minutes < comfortable - Tolerance)
                    yield return Say(table.Walked.Routes[r].Route.Model, step, coat, unit, minutes, comfortable);
            }
        }
    }

    private static (int Coat, int Unit, double Minutes) Shortest(Timetable table, IEnumerable<int> passes) =>
        (from pass in passes.Skip(1)
         from unit in Enumerable.Range(0, table.LastUnit(pass) + 1)
         where !table.IsDone(pass, unit)
         let minutes = Clock.Minutes(table.Start(pass, unit) - table.Finish(pass - 1, unit))
         orderby minutes
         select (table.Posed.Activities[pass].Pass, unit, minutes)).FirstOrDefault((0, 0, double.MaxValue));

    private static Finding Say(Model model, Step step, int coat, int unit, double minutes, double comfortable) => new()
    {
        Level = Level.Warning,
        Place = step.Place,
        Model = model.Name,
        Areas = step.Areas,
        Message = FormattableString.Invariant(
            $"Only {Phrases.Duration(minutes)} between coats {coat} and {coat + 1} of '{Phrases.Step(model, step)}'{(model.Count > 1 ? FormattableString.Invariant($" on no. {unit + 1}") : "")}; {step.Lays.First().Layer.Name} is comfortably recoatable after {Phrases.Duration(comfortable)}."),
        Remedy = "Leave it longer if you can, or do another piece first.",
    };
}
