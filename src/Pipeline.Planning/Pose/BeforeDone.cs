using Pipeline.Abstractions;
using Pipeline.Scheduling;
using Pipeline.Surfaces;

namespace Pipeline.Planning;

/// <summary>Steps still to do that the file puts before work that has been done: nobody can go back there.</summary>
internal static class BeforeDone
{
    /// <summary>One finding of level error for each such step.</summary>
    public static IEnumerable<Finding> In(Walked walked, Posed posed, DoneWork done)
    {
        var problem = posed.Problem;
        var said = new HashSet<(int Route, int Step)>();
        foreach (var wait in problem.Waits.Where(wait => wait.Least is not null && posed.Activities[wait.To].Step is not null).OrderBy(wait => wait.From).ThenBy(wait => wait.To))
        {
            var unit = Done(problem, wait.From);
            var (route, step) = (posed.Activities[wait.From].Route, posed.Activities[wait.From].Step!);
            if (unit < Done(problem, wait.To) && said.Add((route, step.Index)))
                yield return Say(walked, posed, done, wait, unit);
        }
    }

    private static int Done(Problem problem, int activity) => problem.Activities[activity].Past.Sum(run => run.Units);

    private static Finding Say(Walked walked, Posed posed, DoneWork done, Wait wait, int unit)
    {
        var (name, route, step, units) = Hindrances.Named(walked, posed, wait.From);
        var (after, _, later, _) = Hindrances.Named(walked, posed, wait.To);
        var zone = walked.Batch.Bench.Zone;
        var model = walked.Routes[route].Route.Model;
        var run = posed.Problem.Activities[wait.To].Past.First(run => unit < run.FirstUnit + run.Units);
        var stepName = StepNames.Of(walked.Routes[route].Route)[step!.Index];
        var some = done.Tasks.Any(task => task.Model == model.Name && task.Step == stepName);
        var which = units > 1 && unit > 0 ? FormattableString.Invariant($", from piece {unit + 1} on") : "";
        var why = posed.Causes[wait.Reason] is Cause.Order order ? $" ({order.Pair.Why})" : "";
        return new Finding
        {
            Level = Level.Error,
            Place = step.Place,
            Model = model.Name,
            Areas = step.Areas,
            Message = $"{Phrases.Capital(name)} on {model.Name} {(some ? "is not all done" : "is new")}{which} and stands before work already done: "
                + $"{after} was done {Phrases.Moment(posed.Clock.MinuteAt(run.Start), zone)} and comes after it{why}.",
            Remedy = "Move it behind what has been done, leave it out, or say by an earlier time what has been done.",
            Related = later is null ? [] : [new Related(later.Place, "already done")],
        };
    }
}
