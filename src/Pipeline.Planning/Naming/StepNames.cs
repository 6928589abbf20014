using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>Names of steps that stay when other steps come, go or change places.</summary>
public static class StepNames
{
    /// <summary>
    /// The name of each step of a route, by its index: verb, own name or areas, and what it lays, such as <c>coat suit with old brass</c>. A
    /// further step that says the same gets its number: <c>coat suit with old brass (2)</c>.
    /// </summary>
    public static IReadOnlyList<string> Of(Route route)
    {
        ArgumentNullException.ThrowIfNull(route);
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        var names = new List<string>(route.Steps.Count);
        foreach (var step in route.Steps)
        {
            var name = Plain(step);
            var number = seen[name] = seen.GetValueOrDefault(name) + 1;
            names.Add(number == 1 ? name : FormattableString.Invariant($"{name} ({number})"));
        }

        return names;
    }

    private static string Plain(Step step)
    {
        // what takes masks off is called by them
        var masks = step.Deeds.OfType<Deed.TakeMaskOff>().Select(deed => deed.Mask).ToList();
        if (masks.Count > 0)
            return $"{step.Verb} {string.Join('+', masks)}";
        var paint = step.Lays.Select(lay => lay.Layer.Paint?.Name).FirstOrDefault(name => name is not null);
        return paint is null ? $"{step.Verb} {step.As}" : $"{step.Verb} {step.As} with {paint}";
    }
}
