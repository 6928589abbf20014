using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>A step in words that lead to it in the file.</summary>
internal static class FindableStep
{
    /// <summary>
    /// <c>'varnish the suit'</c>; where the route has more steps of these words, with its <c>as</c> name if the file gives one that is its own,
    /// else with its line: <c>'varnish the suit' (line 61)</c>.
    /// </summary>
    public static string In(Route route, int step)
    {
        var words = Phrases.Step(route.Model, route.Steps[step]);
        if (route.Steps.Count(other => Phrases.Step(route.Model, other) == words) == 1)
            return $"'{words}'";
        var name = route.Steps[step].As;
        return IsGiven(route, step) && route.Steps.Count(other => other.As == name) == 1
            ? $"'{name}' ({words})"
            : FormattableString.Invariant($"'{words}' (line {route.Steps[step].Place.Line})");
    }

    // what the file does not name is called by the areas
    private static bool IsGiven(Route route, int step) =>
        route.Steps[step].As is { Length: > 0 } name && name != string.Join('+', route.Steps[step].Areas) && !route.Steps[step].Areas.Contains(name) && name != "all";
}
