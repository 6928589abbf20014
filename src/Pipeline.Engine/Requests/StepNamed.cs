using Pipeline.Abstractions;
using Pipeline.Planning;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Engine;

/// <summary>Finds a step as a painter calls it: by its verb, its <c>as</c> name, areas or parts, paint or scheme, in any order, with or without its model.</summary>
internal static class StepNamed
{
    private const int MostListed = 6;

    private static readonly char[] Between = [' ', '\t', ',', ':', '+', '\'', '"', '‘', '’', '(', ')'];

    // Words that say nothing about which step is meant.
    private static readonly HashSet<string> Small = new(["the", "and", "with", "on", "of", "step"], StringComparer.Ordinal);

    // An area may be called so; where none is, they say nothing either.
    private static readonly HashSet<string> Articles = new(["a", "an"], StringComparer.Ordinal);

    /// <summary>The steps that have all the words; or why there is not one step to show.</summary>
    /// <param name="walked">The batch.</param>
    /// <param name="words">What the painter calls it.</param>
    /// <param name="model">Only of this model; null for any.</param>
    public static (IReadOnlyList<(int Route, int Step)> Steps, Refusal? Refusal) Find(Walked walked, string words, string? model)
    {
        var all = All(walked).Where(named => model is null || named.Model == model).ToList();
        var asked = Folded(words).ToList();
        var said = string.Join(' ', asked);
        var meant = all.Where(named => named.Spoken.Contains(said)).ToList();
        if (meant.Count == 0)
            meant = asked.Count == 0 ? [] : all.Where(named => asked.TrueForAll(word => named.Words.Contains(word) || Articles.Contains(word))).ToList();
        if (meant.Count == 0)
            return ([], NotFound(words, all));
        // a scheme's step is one step of several models
        var isOne = meant.Select(named => named.Place).Distinct().Count() == 1 && meant.Select(named => named.Route).Distinct().Count() == meant.Count;
        return isOne ? ([.. meant.Select(named => (named.Route, named.Step))], null) : ([], Several(words, meant));
    }

    private sealed record Named(int Route, int Step, string Model, string Name, Place Place, HashSet<string> Spoken, HashSet<string> Words);

    private static IEnumerable<Named> All(Walked walked)
    {
        for (var r = 0; r < walked.Routes.Count; r++)
        {
            var route = walked.Routes[r].Route;
            var names = StepNames.Of(route);
            foreach (var step in route.Steps)
            {
                var name = names[step.Index];
                var own = Folded(name).Concat(step.Areas.SelectMany(Folded)).Concat(Folded(step.Scheme ?? "")).Concat(step.Lays.SelectMany(lay => Folded(lay.Layer.Paint?.Name ?? "")));
                var written = AsWritten(route.Model, step);
                // in full, or without the paint, or as the file says it, or by its own name alone; each with or without the model
                string[] spoken = [name, $"{step.Verb} {step.As}", $"{step.Verb} {written}", step.As];
                yield return new Named(
                    r,
                    step.Index,
                    route.Model.Name,
                    name,
                    step.Place,
                    [.. spoken.Select(Joined), .. spoken.Select(each => Joined($"{route.Model.Name} {each}"))],
                    [.. own, .. Folded(written), .. Folded(route.Model.Name)]);
            }
        }
    }

    // A file says 'all', or a part, where the plan lists areas; parts are named first, then the areas left over.
    private static string AsWritten(Model model, Step step)
    {
        if (step.Deeds.OfType<Deed.Join>().FirstOrDefault() is { Parts.IsEmpty: false } join)
            return string.Join(' ', join.Parts);
        if (step.Areas.Count == model.Areas.Count)
            return "all areas";
        var whole = model.Parts.Where(part => model.Areas.Any(area => area.Part == part) && model.Areas.All(area => area.Part != part || step.Areas.Contains(area.Name))).ToList();
        var rest = model.Areas.Where(area => step.Areas.Contains(area.Name) && !whole.Contains(area.Part)).Select(area => area.Name);
        return string.Join(' ', whole.Concat(rest));
    }

    private static string Joined(string text) => string.Join(' ', Folded(text));

    private static IEnumerable<string> Folded(string text) =>
        text.ToLowerInvariant().Split(Between, StringSplitOptions.RemoveEmptyEntries).Where(word => !Small.Contains(word));

    private static Refusal NotFound(string words, List<Named> all)
    {
        var near = new Nearest();
        var meant = near.To(words, all.Select(named => named.Name).Concat(all.Select(named => $"{named.Model}: {named.Name}")))
            ?? Respelt(words, all, near);
        return new Refusal(
            $"no step is called '{Faults.OnOneLine(words)}'",
            meant is null
                ? "Name it by verb, areas, paint or 'as' name, such as 'varnish suit' or 'Line diver: unmask discs', or give FILE:LINE."
                : $"Did you mean '{meant}'?");
    }

    // Word by word, where the whole is not near anything.
    private static string? Respelt(string words, List<Named> all, Nearest near)
    {
        var known = all.SelectMany(named => named.Words).Distinct().ToList();
        var mended = Folded(words).Select(word => known.Contains(word) ? word : near.To(word, known)).ToList();
        return mended.Count > 0 && mended.TrueForAll(word => word is not null) && all.Exists(named => mended.TrueForAll(word => named.Words.Contains(word!)))
            ? string.Join(' ', mended)
            : null;
    }

    private static Refusal Several(string words, List<Named> meant)
    {
        var listed = meant.Take(MostListed).Select(named => FormattableString.Invariant($"'{named.Model}: {named.Name}' (line {named.Place.Line})"));
        var more = meant.Count > MostListed ? FormattableString.Invariant($" and {meant.Count - MostListed} more") : "";
        return new Refusal(
            FormattableString.Invariant($"'{Faults.OnOneLine(words)}' may be any of {meant.Count} steps: {string.Join(", ", listed)}{more}"),
            "Say more of the one you mean, or give FILE:LINE.");
    }
}
