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
            if (LeftOfAnEffect(moment, moment.Before[area], area, liquid) is { } left)
                yield return left;
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

    // What was cleaned back before is to stay, unless it is the same effect gone over again: something has been laid on it since.
    private static Verdict.Needs? LeftOfAnEffect(Moment moment, Surface surface, string area, Liquid liquid)
    {
        if (moment.Step.First<Deed.CleanBack>() is null || LastCleanedBack(moment, area) is not { } back || surface.Top is not { } top || top.Step < back)
            return null;
        for (var i = surface.Layers.Count - 1; i >= 0 && surface.Layers[i].Role is LayerRole.Effect or LayerRole.Powder; i--)
        {
            var effect = surface.Layers[i];
            if (effect.Step > back && effect.IsWetInWet)
                return null;
            if (effect.Step > back || effect.Family is not { } family || moment.Tables.Rewetting(liquid, family) is not { WhenDry: >= Bite.Lifts } row)
                continue;
            return moment.WaitsFor(
                effect, DryingState.Recoatable, area,
                $"{liquid.Spoken()} {(row.WhenDry == Bite.Strips ? "strips" : "lifts")} what is left of {effect.Name} until that has dried.",
                "Let it dry before the next effect, lay a varnish between them, or clean both back in one go.") is { } wait
                ? wait with { Since = back, Gravest = Level.Warning }
                : null;
        }

        return null;
    }

    private static int? LastCleanedBack(Moment moment, string area)
    {
        for (var i = moment.Step.Index - 1; i >= 0; i--)
        {
            if (moment.At(i).First<Deed.CleanBack>() is { Of: null } && moment.At(i).Areas.Contains(area))
                return i;
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
