using System.Globalization;
using Pipeline.Abstractions;
using Pipeline.Scheduling;
using Pipeline.Surfaces;

namespace Pipeline.Planning;

/// <summary>What stands in the way of any plan, at the places in the file that could be changed, with a way out.</summary>
internal static class Hindrances
{
    /// <summary>One finding for each obstacle; several of the same kind at the same place only once.</summary>
    public static Sequence<Finding> Of(Walked walked, Posed posed, IEnumerable<Obstacle> obstacles, CancellationToken cancel = default)
    {
        var all = obstacles.ToList();
        var isHint = all.Any(o => o is Obstacle.NotFound);
        // that nothing was found adds nothing where something else explains it
        if (all.Any(o => o is not Obstacle.NotFound))
            all.RemoveAll(o => o is Obstacle.NotFound);
        return all.Select(obstacle => Say(walked, posed, obstacle, isHint, cancel)).DistinctBy(f => (f.Place, f.Message)).OrderBy(f => f.Place).ToSequence();
    }

    // What stood in the way of the last try is a hint and no proof, unless it is seen to be one.
    private static Finding Say(Walked walked, Posed posed, Obstacle obstacle, bool isHint, CancellationToken cancel) => obstacle switch
    {
        Obstacle.PinContradicts pin when PinHindrance.Of(walked, posed, pin, cancel) is var (finding, isSure) => isHint && !isSure ? Hint(finding) : finding,
        Obstacle.OpenHoursEnd end => HoursEnd(walked, posed, end, isSure: !isHint || IsMoreThanOpen(posed.Problem)),
        Obstacle.NotFound => Say(walked, posed, obstacle),
        _ when isHint => Hint(Say(walked, posed, obstacle)),
        _ => Say(walked, posed, obstacle),
    };

    private static Finding Hint(Finding finding) =>
        finding with { Message = $"No plan was found; there may be one. What stood in the way of the last try: {char.ToLowerInvariant(finding.Message[0])}{finding.Message[1..]}" };

    private static bool IsMoreThanOpen(Problem problem) =>
        problem.Activities.Where(activity => activity.IsAttended).Sum(activity => activity.SetUp + (activity.Together ? activity.PerUnit : activity.Units * activity.PerUnit) + activity.PutAway)
        > problem.Workers.Sum(worker => worker.Open.Days.Sum(day => Math.Min(day.Sum(open => open.Length), worker.MostPerDay ?? long.MaxValue)));

    private static Finding Say(Walked walked, Posed posed, Obstacle obstacle) => obstacle switch
    {
        Obstacle.FitsNoInterval fits => At(
            walked,
            posed,
            fits.Activity,
            (name, units) => $"No sitting is long enough for {name}: {(units > 1 ? "one unit" : "it")} needs {Minutes(fits.Needed)} with set-up and cleaning, and the longest sitting is {Minutes(fits.Longest)}.",
            "Make a sitting longer, or part the step into smaller ones.",
            [new Related(walked.Batch.Bench.Place, "the bench and its sittings")]),
        Obstacle.FitsNoDay fits => At(
            walked,
            posed,
            fits.Activity,
            (name, units) => $"No day allows enough work for {name}: {(units > 1 ? "one unit" : "it")} needs {Minutes(fits.Needed)} with set-up and cleaning, and 'most-per-day' at the bench is {Minutes(fits.Most)}.",
            $"Raise 'most-per-day' to {Minutes(fits.Needed)} or more, or part the step into smaller ones.",
            [new Related(walked.Batch.Bench.Place, "the bench")]),
        Obstacle.FitsNoPlace place => At(
            walked,
            posed,
            place.Activity,
            (name, _) => $"{Phrases.Capital(name)} needs {place.Needed.ToString(CultureInfo.InvariantCulture)} places of the {posed.Problem.Places[place.Place].Name} at once, and there are {place.Capacity.ToString(CultureInfo.InvariantCulture)}.",
            "List more places at the bench, make the lot smaller, or write 'together: no' to take its pieces one after another.",
            [new Related(walked.Batch.Bench.Place, "the bench and its tools")]),
        Obstacle.WaitsContradict ring => Ring(walked, posed, ring),
        Obstacle.GreatestWaitTooShort most => TooShort(walked, posed, most),
        Obstacle.ProvedImpossible => Whole(walked, "There is no plan that keeps all waits and sittings together.", $"Make sittings longer, add some, {OrRaise(walked)}or take a decided time ('at') back."),
        _ => Whole(walked, "No plan was found that keeps all waits and sittings together; there may be one.", $"Search more thoroughly, make sittings longer, add some, {OrRaise(walked)}or take a decided time ('at') back."),
    };

    private static Finding HoursEnd(Walked walked, Posed posed, Obstacle.OpenHoursEnd end, bool isSure)
    {
        var typical = TypicalMinutes(walked, posed);
        var sittings = typical > 0 ? Math.Max(1, (long)Math.Ceiling(Clock.Minutes(end.Ticks) / typical)) : 1;
        var last = posed.Sittings.IsEmpty ? "" : $" The last one ends {Phrases.Moment(posed.Sittings[^1].End, walked.Batch.Bench.Zone)}.";
        var (name, _, step, _) = Named(walked, posed, end.Activity);
        return new Finding
        {
            Level = Level.Error,
            Place = walked.Batch.Bench.Place,
            Message = isSure
                ? $"The sittings end before the work does: {Minutes(end.Ticks)} of work find no time, first {name}. It needs {Phrases.Counted(sittings, "more sitting")} at the least.{last}"
                : $"No plan was found in the sittings there are: {Minutes(end.Ticks)} of work find no time, first {name}. That is {Phrases.Counted(sittings, "more sitting")}.{last}",
            Remedy = "Add sittings by weekday, or by date until the work fits.",
            Related = step is null ? [] : [new Related(step.Place, "the first step without a time")],
        };
    }

    // Of the mean sitting, what the day allows.
    private static double TypicalMinutes(Walked walked, Posed posed) => posed.Sittings.IsEmpty ? 0 : posed.Sittings
        .GroupBy(sitting => sitting.Date, sitting => sitting.Minutes)
        .Sum(day => Math.Min(day.Sum(), walked.Batch.Bench.MostPerDay?.Minutes ?? double.MaxValue)) / posed.Sittings.Length;

    // Where days are capped, that may be what leaves no room.
    public static string OrRaise(Walked walked) => walked.Batch.Bench.MostPerDay is null ? "" : "raise 'most-per-day', ";

    private static Finding TooShort(Walked walked, Posed posed, Obstacle.GreatestWaitTooShort most)
    {
        var wait = posed.Problem.Waits[most.Wait];
        var (from, _, earlier, _) = Named(walked, posed, wait.From);
        var cause = posed.Causes[wait.Reason] as Cause.Ruled;
        return At(
            walked,
            posed,
            wait.To,
            (name, _) => $"{Phrases.Capital(name)} has to follow {from} within {Minutes(wait.Greatest ?? 0)}, and the sittings and the other waits leave no room for that.{(cause is null ? "" : $" {cause.Wait.Needs.Message}")}",
            $"Make a sitting longer, add one the day after, {OrRaise(walked)}or take work out from between the two.",
            earlier is null ? [] : [new Related(earlier.Place, "the earlier step")],
            cause?.Wait.Rule);
    }

    private static Finding Ring(Walked walked, Posed posed, Obstacle.WaitsContradict ring)
    {
        var ruled = ring.Waits.Select(w => posed.Causes[posed.Problem.Waits[w].Reason]).OfType<Cause.Ruled>().ToList();
        var said = ring.Waits.Select(w => Wait(walked, posed, w)).ToList();
        var longest = ring.Waits.FirstOrDefault(w => posed.Problem.Waits[w].Greatest is not null, ring.Waits[0]);
        var names = ruled.Select(cause => $"'{cause.Wait.Rule}'").Distinct().ToList();
        return At(
            walked,
            posed,
            posed.Problem.Waits[longest].To,
            (_, _) => $"These times contradict each other by {About(ring.Excess)}: {string.Join("; ", said)}.{(names.Count > 1 ? $" The rules {Phrases.Listed(names)} cannot {(names.Count == 2 ? "both" : "all")} be kept." : "")}",
            MaskOf(walked, posed, longest) is { } mask
                ? $"Take '{mask}' off in between and mask anew, choose a mask that may lie longer or a paint that dries sooner, or write the label's times into the file."
                : "Move a step out from between, choose another paint, or write the label's times into the file.",
            ruled.Select(cause => walked.Routes[cause.Route].Route.Steps[cause.Wait.Needs.Since]).DistinctBy(s => s.Place).Select(s => new Related(s.Place, "counted from here")).ToSequence());
    }

    // The mask whose time on a wait is; null if it is another wait.
    private static string? MaskOf(Walked walked, Posed posed, int index) =>
        posed.Causes[posed.Problem.Waits[index].Reason] is Cause.Ruled { Route: var route, Wait.Needs: var needs }
            ? walked.Routes[route].Masks.FirstOrDefault(mask => mask.OnStep == needs.Since && mask.OffStep == needs.Step)?.Name
            : null;

    public static string Wait(Walked walked, Posed posed, int index)
    {
        var wait = posed.Problem.Waits[index];
        var from = Named(walked, posed, wait.From).Name;
        var to = Named(walked, posed, wait.To).Name;
        var length = wait.Greatest is { } most ? $"at most {Minutes(most)}" : wait.Least is > 0 ? $"at least {About(wait.Least.Value)}" : "in this order";
        var rule = posed.Causes[wait.Reason] is Cause.Ruled ruled ? $" ({ruled.Wait.Rule})" : "";
        return $"{from} to {to} {length}{rule}";
    }

    private static Finding At(
        Walked walked, Posed posed, int activity, Func<string, int, string> message, string remedy, Sequence<Related> related, string? rule = null)
    {
        var (name, route, step, units) = Named(walked, posed, activity);
        return new Finding
        {
            Rule = rule,
            Level = Level.Error,
            Place = step?.Place ?? walked.Routes[route].Route.Model.Place,
            Model = walked.Routes[route].Route.Model.Name,
            Areas = step?.Areas ?? [],
            Message = message(name, units),
            Remedy = remedy,
            Related = related,
        };
    }

    private static Finding Whole(Walked walked, string message, string remedy) =>
        new() { Level = Level.Error, Place = walked.Batch.Bench.Place, Message = message, Remedy = remedy };

    public static (string Name, int Route, Step? Step, int Units) Named(Walked walked, Posed posed, int activity)
    {
        var at = posed.Activities[activity];
        var model = walked.Routes[at.Route].Route.Model;
        return (at.Step is { } step ? Phrases.Task(model, step, at.Pass) : $"'{model.Name} is ready'", at.Route, at.Step, model.Count);
    }

    private static string About(long ticks) => Phrases.About(Clock.Minutes(ticks));

    private static string Minutes(long ticks) => Phrases.Duration(Clock.Minutes(ticks));
}
