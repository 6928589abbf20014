using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>A quick water-based skin over a film of enamel or oil that still moves.</summary>
public sealed class FatOverLean : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A water-based coat waits until the enamel or oil under it has cured.";

    /// <inheritdoc/>
    public override StepKind? OnlyKind => StepKind.Coat;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        if (moment.Step.Kind != StepKind.Coat || moment.Step.Coat() is not { } coat)
            yield break;
        foreach (var area in moment.Reached())
        {
            if (moment.Before[area].Top is not { } top || Concerns.Of(coat, top) != Concern.FatOverLean)
                continue;
            if (moment.WaitsFor(top, DryingState.Cured, area, $"{coat.Name} skins over {top.Name} while that still moves, and cracks.", "Let it cure, then scuff it lightly.") is { } wait)
                yield return wait;
        }
    }
}
