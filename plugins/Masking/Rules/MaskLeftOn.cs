using Pipeline.Abstractions;

namespace Pipeline.Plugins.Masking.Rules;

/// <summary>A mask that goes on and never comes off.</summary>
public sealed class MaskLeftOn : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Every mask comes off again.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> JudgeRoute(WalkedSteps route)
    {
        if (route.Moments.IsEmpty)
            yield break;
        var last = route.Moments[^1];
        foreach (var area in last.After.Areas)
        {
            foreach (var mask in last.After[area].Masks)
            {
                yield return route.Moments[mask.Step].Says(
                    Level.Error,
                    area,
                    $"The mask '{mask.Name}' on {{areas}} is never taken off.",
                    $"Add 'unmask: {mask.Name}' once the last coat beside it is touch-dry.");
            }
        }
    }
}
