using Pipeline.Abstractions;

namespace Pipeline.Plugins.Weathering.Rules;

/// <summary>Varnish or paint over an effect whose solvent is still in it.</summary>
public sealed class SealOverWetEffect : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "An effect has lost its solvent before anything seals it in.";

    /// <inheritdoc/>
    public override StepKind? OnlyKind => StepKind.Coat;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        if (moment.Step.Kind != StepKind.Coat || moment.Step.Coat() is not { } coat)
            yield break;
        foreach (var area in moment.Reached())
        {
            if (moment.Before[area].Top is not { } top || Concerns.Of(coat, top) != Concern.SealOverEffect)
                continue;
            if (moment.WaitsFor(top, DryingState.Cured, area, $"Solvent of {top.Name} shut in under {coat.Name} fogs, softens or cracks it.", "Wait until there is no smell and no wet shine.") is { } wait)
                yield return wait;
        }
    }
}
