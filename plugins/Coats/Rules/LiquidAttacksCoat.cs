using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>Something is cleaned with a liquid that takes the coat under it along.</summary>
public sealed class LiquidAttacksCoat : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A piece is cleaned with a liquid that its coats bear.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => LiquidOf(step) is not null;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        if (LiquidOf(moment.Step) is not { } liquid)
            yield break;
        foreach (var area in moment.Reached())
        {
            if (Under(moment.Before[area]) is not { Family: { } family } coat || IsToldElsewhere(liquid, coat) || moment.Tables.Rewetting(liquid, family) is not { } row)
                continue;
            var pointer = new Pointer(coat.Step, $"{coat.Name} was laid here");
            if (row.WhenCured >= Bite.Lifts)
            {
                yield return moment.Says(
                    row.WhenCured == Bite.Strips ? Level.Error : Level.Warning,
                    area,
                    $"{liquid.Spoken()} {(row.WhenCured == Bite.Strips ? "strips" : "lifts")} {coat.Name} on {{areas}}, cured or not.",
                    "Take a milder liquid, or lay a varnish that bears it first.",
                    pointer);
            }
            else if (row.WhenDry >= Bite.Lifts && moment.WaitsFor(coat, DryingState.Cured, area, $"{liquid.Spoken()} lifts {coat.Name} until that has cured.", "Wait, or take a milder liquid.") is { } wait)
            {
                yield return wait with { Gravest = Level.Warning };
            }
        }
    }

    // a chipping medium is meant to be dissolved
    private static Liquid? LiquidOf(Step step)
    {
        foreach (var deed in step.Deeds)
        {
            var liquid = deed switch
            {
                Deed.CleanBack { Of: null } back => back.Liquid,
                Deed.Prepare { What: Preparation.Washed } wash => wash.Liquid,
                _ => null,
            };
            if (liquid is not null)
                return liquid;
        }

        return null;
    }

    // the effect that is cleaned back is meant to go
    private static Layer? Under(Surface surface)
    {
        for (var i = surface.Layers.Count - 1; i >= 0; i--)
        {
            if (surface.Layers[i].Role is not (LayerRole.Effect or LayerRole.Powder or LayerRole.Texture))
                return surface.Layers[i];
        }

        return null;
    }

    private static bool IsToldElsewhere(Liquid liquid, Layer coat) =>
        (liquid.Carrier() == Carrier.Alcohol && coat.IsWaterborne()) || (liquid.Carrier() == Carrier.Spirit && coat.IsSpirit());
}
