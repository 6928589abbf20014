using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Scheduling;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>A decided time that stands in the way of a plan, in words.</summary>
internal static class PinHindrance
{
    /// <summary>The finding, at the decided time in the file, and whether it is sure that no plan keeps it.</summary>
    public static (Finding Finding, bool IsSure) Of(Walked walked, Posed posed, Obstacle.PinContradicts pin, CancellationToken cancel)
    {
        var zone = walked.Batch.Bench.Zone;
        var (name, route, step, _) = Hindrances.Named(walked, posed, pin.Activity);
        var wait = pin.Wait is { } w ? posed.Problem.Waits[w] : null;
        var decided = walked.Routes[route].Route.Pins.FirstOrDefault(p => p.Step == step?.Index);
        var isBefore = wait is { Greatest: null, Least: not null } && pin.By > 0;
        var target = pin.Activity;
        if (isBefore && decided is null && Decided(walked, posed, wait!.To, step) is { } after)
        {
            // what is decided comes later than what has no room before it, and is what the painter has to move
            decided = after;
            target = posed.Routes[route].First(after.Step);
            name = $"'{Phrases.Step(walked.Routes[route].Route.Model, walked.Routes[route].Route.Steps[after.Step])}'";
        }

        var times = new DecidedTimes(walked, posed);
        var when = decided is null ? "" : $" is set for {Phrases.Moment(Pinned.At(decided, zone), zone)}, but that";
        // moved to there it is not refused anew
        var first = isBefore && posed.Problem.Activities[target].PinnedStart is { } tick && times.First(target, cancel) is { } found && found > posed.Clock.InstantAt(tick) ? found : (Instant?)null;
        var (why, isSure) = wait is null
            ? times.Why(target) is { } known ? ($" cannot be kept: {known}", true) : ($" cannot be kept: hands, tools or places are not free then{(walked.Batch.Bench.MostPerDay is null ? "" : ", or the day has no room for it within 'most-per-day'")}", false)
            : (TooFar(walked, posed, pin, isBefore && decided is not null, first is null), Contradictions.IsTooEarly(posed.Problem, target));
        return (new Finding
        {
            Rule = wait is not null && posed.Causes[wait.Reason] is Cause.Ruled ruled ? ruled.Wait.Rule : null,
            Level = Level.Error,
            Place = decided?.Place ?? step?.Place ?? walked.Batch.Bench.Place,
            Model = walked.Routes[route].Route.Model.Name,
            Message = $"{Phrases.Capital(name)}{when}{why}.{(first is { } moment ? $" The first start found is {Phrases.Moment(moment, zone)}." : "")}",
            Remedy = $"Move the time, add a sitting for it, {Hindrances.OrRaise(walked)}or let the planner choose.",
        }, isSure);
    }

    // By how much, one wait alone tells only in part; a start that is known tells more.
    private static string TooFar(Walked walked, Posed posed, Obstacle.PinContradicts pin, bool isBefore, bool withMuch)
    {
        var by = withMuch && pin.By > 0 ? $"{Phrases.Duration(Clock.Minutes(pin.By))} " : "";
        return $" is {by}too {(posed.Problem.Waits[pin.Wait!.Value].Greatest is null ? "early" : "late")}: {(isBefore ? "what comes before it cannot be done sooner, " : "")}{Hindrances.Wait(walked, posed, pin.Wait.Value)}";
    }

    // The other end of the wait, or the first one decided after the step.
    private static Pin? Decided(Walked walked, Posed posed, int to, Step? step)
    {
        var pins = walked.Routes[posed.Activities[to].Route].Route.Pins;
        return pins.FirstOrDefault(pin => pin.Step == posed.Activities[to].Step?.Index)
            ?? pins.Where(pin => pin.Step > (step?.Index ?? -1)).MinBy(pin => pin.Step);
    }
}
