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
        foreach (var task in earlier.Tasks.Where(task => task.Start < done.Until && task.DoneBy(done.Until) != task))
        {
            var through = task.DoneBy(done.Until)?.Units ?? 0;
            yield return Note(
                walked,
                task,
                $"{Phrases.Capital(Named(routes.GetValueOrDefault(task.Model), task))} was under way {Phrases.Moment(done.Until, zone)} (from {Phrases.Moment(task.Start, done.Until, zone)} to {Phrases.Moment(task.End, done.Until, zone)}): "
                    + (through == 0 ? "it is planned anew." : FormattableString.Invariant($"{through} of its {task.Units} pieces were through by the plan and count as done.")),
                "Give a later time if more is done, an earlier one if less.");
        }

        foreach (var gone in done.Tasks.GroupBy(task => (task.Model, task.Step)))
        {
            var task = gone.First();
            if (!routes.TryGetValue(task.Model, out var route))
                continue;
            var step = names[task.Model].ToList().IndexOf(task.Step);
            if (step < 0)
                yield return Note(walked, task, $"{Named(null, task)} was done {Phrases.Moment(task.Start, zone)} and is not in the file any more: nothing counts on it, and what the file says there now is still to be done.", null);
            else if (gone.Max(each => each.Coat) is var coats && coats > route.Route.Steps[step].Work.Passes)
                yield return Note(walked, task, FormattableString.Invariant($"{Named(null, task)} has had {coats} coats, and the file asks for {Phrases.Counted(route.Route.Steps[step].Work.Passes, "coat")}."), null);
        }

        foreach (var model in done.Tasks.GroupBy(task => task.Model))
        {
            var was = model.Max(task => task.OfUnits);
            if (!routes.TryGetValue(model.Key, out var route))
                yield return Note(walked, model.First(), $"{model.Key} is not in the file any more; what was done on it is left out.", null);
            else if (route.Route.Model.Count > was)
                yield return Note(walked, model.First(), $"{model.Key} is {Pieces(route.Route.Model.Count)} now instead of {was}: done is what was done on the first {was}, and {(route.Route.Model.Count == was + 1 ? "the new one begins" : "the new ones begin")} at the first step.", null);
            else if (route.Route.Model.Count < was)
                yield return Note(walked, model.First(), $"{model.Key} is {Pieces(route.Route.Model.Count)} now instead of {was}: what was done on the others is left out.", null);
        }
    }

    private static string Pieces(int count) => Phrases.Counted(count, "piece");

    // By its words where the file still has it.
    private static string Named(WalkedRoute? route, WrittenTask task)
    {
        var step = route is null ? -1 : StepNames.Of(route.Route).ToList().IndexOf(task.Step);
        return step < 0 ? $"'{task.Step}' on {task.Model}" : $"{Phrases.Task(route!.Route.Model, route.Route.Steps[step], task.Coat - 1)} on {task.Model}";
    }

    // At the model where the file has it; at the bench otherwise.
    private static Finding Note(Walked walked, WrittenTask task, string message, string? remedy)
    {
        var model = walked.Routes.Select(route => route.Route.Model).FirstOrDefault(model => model.Name == task.Model);
        return new Finding { Level = Level.Note, Place = model?.Place ?? walked.Batch.Bench.Place, Model = model?.Name, Message = message, Remedy = remedy };
    }
}
