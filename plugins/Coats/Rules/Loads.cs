using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>What follows what in a spraying tool.</summary>
internal static class Loads
{
    /// <summary>Each step that fills a tool with something else than the step before it on the same tool did.</summary>
    public static IEnumerable<(Moment Before, Moment Refill)> Refills(this WalkedSteps route)
    {
        var last = new Dictionary<string, Moment>(StringComparer.Ordinal);
        foreach (var moment in route.Moments)
        {
            if (moment.Step.Work is not { Tool: { } tool, Load: { } load })
                continue;
            if (last.TryGetValue(tool, out var before) && before.Step.Work.Load!.Name != load.Name)
                yield return (before, moment);
            last[tool] = moment;
        }
    }

    /// <summary>Water on one side, solvent, spirit or alcohol on the other.</summary>
    public static bool Gel(Carrier one, Carrier other) =>
        (one == Carrier.Water) != (other == Carrier.Water) && IsThinned(one) && IsThinned(other);

    private static bool IsThinned(Carrier carrier) => carrier is Carrier.Water or Carrier.Solvent or Carrier.Spirit or Carrier.Alcohol;
}
