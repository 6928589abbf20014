using Pipeline.Abstractions;

namespace Pipeline.Plugins.Decals.Rules;

/// <summary>A decal on ground that is too young.</summary>
public sealed class DecalTooSoon : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A decal waits until its ground can bear water and softener.";

    /// <inheritdoc/>
    public override StepKind? OnlyKind => StepKind.Coat;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        if (moment.Step.Kind != StepKind.Coat || moment.Step.Coat() is not { } coat)
            yield break;
        if (coat.Role != LayerRole.Decal)
            yield break;
        foreach (var area in moment.Reached())
        {
            if (moment.Before[area].Top is not { } top || Concerns.Of(coat, top) != Concern.DecalOnYoung)
                continue;
            var state = top.IsSpirit() ? DryingState.Cured : DryingState.WashSafe;
            if (moment.WaitsFor(top, state, area, $"Water and softener attack {top.Name} while it is young.", "Leave the ground overnight before the decals.") is { } wait)
                yield return wait;
        }
    }
}
