using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>Styrene or printed resin is stripped or washed in strong solvent.</summary>
public sealed class SolventMeltsPiece : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Styrene and printed resin are never flooded with lacquer thinner, acetone or debonder.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => FloodOf(step) is not null;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        var flood = FloodOf(moment.Step)!;
        foreach (var area in moment.Step.Areas)
        {
            var material = moment.Before[area].Material;
            if (!material.SoftensInSolvent)
                continue;
            yield return moment.Says(
                Level.Error,
                area,
                $"{char.ToUpperInvariant(flood[0])}{flood[1..]} melts the {material.Name} of {{areas}} along with the paint.",
                "Take a milder liquid, such as an alkaline cleaner, and try it on a piece of frame first.");
        }
    }

    private static string? FloodOf(Step step)
    {
        foreach (var deed in step.Deeds)
        {
            var flood = deed switch
            {
                Deed.Strip { Dissolves: Carrier.Solvent } strip => strip.With,
                Deed.Prepare { What: Preparation.Washed, Liquid: { } liquid } when liquid.Carrier() == Carrier.Solvent => liquid.Spoken(),
                _ => null,
            };
            if (flood is not null)
                return flood;
        }

        return null;
    }
}
