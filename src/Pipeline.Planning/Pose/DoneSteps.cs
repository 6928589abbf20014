using Pipeline.Abstractions;
using Pipeline.Surfaces;

namespace Pipeline.Planning;

/// <summary>Work that has been done, found again in the batch as it is now, and what there is to say about that.</summary>
internal static class DoneSteps
{
    /// <summary>The batch without the decided times of what has been done: its times are facts.</summary>
    public static Walked WithoutPins(Walked walked, DoneWork done)
    {
        var known = done.Tasks.Select(task => (task.Model, task.Step)).ToHashSet();
        return walked with { Routes = walked.Routes.Select(WithoutPins).ToSequence() };

        WalkedRoute WithoutPins(WalkedRoute route)
        {
            if (route.Route.Pins.IsEmpty)
                return route;
            var names = StepNames.Of(route.Route);
            return route with { Route = route.Route with { Pins = route.Route.Pins.Without(pin => known.Contains((route.Route.Model.Name, names[pin.Step]))) } };
        }
    }

    /// <summary>Whether all that hands have to do on a model has been done.</summary>
    public static bool AreAll(WalkedRoute route, DoneWork done)
    {
        var pieces = done.Tasks.SelectMany(task => task.Pieces).ToHashSet();
        var names = StepNames.Of(route.Route);
        return route.Route.Steps.Where(step => step.Work.PassOver(route.Route.Model.Count).Minutes > 0).All(step =>
            Enumerable.Range(1, step.Work.Passes).All(coat => Enumerable.Range(1, route.Route.Model.Count).All(unit =>
                pieces.Contains((route.Route.Model.Name, names[step.Index], coat, unit)))));
    }

    /// <summary>
    /// What is not as the earlier plan had it: work under way at that time, done work that is not in the file any more, models with more or
    /// fewer pieces.
    /// </summary>
    public static IEnumerable<Finding> Said(Walked walked, WrittenPlan earlier, DoneWork done)
    {
        var zone = walked.Batch.Bench.Zone;
        var routes = walked.Routes.GroupBy(route => route.Route.Model.Name, StringComparer.Ordinal).ToDictionary(same => same.Key, same => same.First(), StringComparer.Ordinal);
        var names = routes.ToDictionary(route => route.Key, route => StepNames.Of(route.Value.Route), StringComparer.Ordinal);
        foreach (var task in earlier.Tasks.Where(task => task.Start < done.Until && WrittenPlan.Minute(task.End) > WrittenPlan.Minute(done.Until) && !done.Tasks.Contains(task)))
        {
            yield return Note(walked, task, Level.Note, $"{Named(task)} was under way {Phrases.Moment(done.Until, zone)} (from {Phrases.Moment(task.Start, done.Until, zone)} to {Phrases.Moment(task.End, done.Until, zone)}) and is planned anew.", "Give a later time if it is done.");
        }

        foreach (var gone in done.Tasks.GroupBy(task => (task.Model, task.Step)))
        {
            var task = gone.First();
            if (!routes.TryGetValue(task.Model, out var route))
                continue;
            var step = names[task.Model].ToList().IndexOf(task.Step);
            if (step < 0)
                yield return Note(walked, task, Level.Note, $"{Named(task)} was done {Phrases.Moment(task.Start, zone)} and is not in the file any more: nothing counts on it, and what the file says there now is still to be done.", null);
            else if (gone.Max(each => each.Coat) is var coats && coats > route.Route.Steps[step].Work.Passes)
                yield return Note(walked, task, Level.Note, FormattableString.Invariant($"{Named(task)} has had {coats} coats, and the file asks for {Phrases.Counted(route.Route.Steps[step].Work.Passes, "coat")}."), null);
        }

        foreach (var model in done.Tasks.GroupBy(task => task.Model))
        {
            var was = model.Max(task => task.OfUnits);
            if (!routes.TryGetValue(model.Key, out var route))
                yield return Note(walked, model.First(), Level.Note, $"{model.Key} is not in the file any more; what was done on it is left out.", null);
            else if (route.Route.Model.Count > was)
                yield return Note(walked, model.First(), Level.Note, $"{model.Key} is {Pieces(route.Route.Model.Count)} now instead of {was}: done is what was done on the first {was}, and {(route.Route.Model.Count == was + 1 ? "the new one begins" : "the new ones begin")} at the first step.", null);
            else if (route.Route.Model.Count < was)
                yield return Note(walked, model.First(), Level.Note, $"{model.Key} is {Pieces(route.Route.Model.Count)} now instead of {was}: what was done on the others is left out.", null);
        }
    }

    private static string Pieces(int count) => Phrases.Counted(count, "piece");

    private static string Named(WrittenTask task) => $"'{task.Step}' on {task.Model}";

    // At the model where the file has it; at the bench otherwise.
    private static Finding Note(Walked walked, WrittenTask task, Level level, string message, string? remedy)
    {
        var model = walked.Routes.Select(route => route.Route.Model).FirstOrDefault(model => model.Name == task.Model);
        return new Finding { Level = level, Place = model?.Place ?? walked.Batch.Bench.Place, Model = model?.Name, Message = message, Remedy = remedy };
    }
}
