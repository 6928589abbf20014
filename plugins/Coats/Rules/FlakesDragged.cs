using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>A wet coat of alcohol or strong solvent on an alcohol-thinned metallic that nothing seals.</summary>
public sealed class FlakesDragged : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Bare alcohol metal is only misted over.";

    /// <inheritdoc/>
    public override StepKind? OnlyKind => StepKind.Coat;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        if (moment.Step.Kind != StepKind.Coat || moment.Step.Coat() is not { } coat)
            yield break;
        if (!(coat.IsAlcohol() || coat.IsHot() || coat.IsStain()) || !coat.IsWet())
            yield break;
        foreach (var area in moment.Reached())
        {
            if (moment.Before[area].TopCoat() is not { } top || !top.IsAlcohol() || !top.IsMetallic)
                continue;
            yield return moment.Says(
                coat.IsStain() ? Level.Warning : Level.Error,
                area,
                $"{coat.Name} laid wet on the bare {top.Name} of {{areas}} floats its flakes: the metal blotches.",
                $"Seal {top.Name} with two mist coats first ('body: mist').",
                new Pointer(top.Step, $"{top.Name} was laid here"))
                .MendedBy(coat.IsAlcohol() ? null : moment.MistFirst(coat));
        }
    }
}
