using Pipeline.Abstractions;

namespace Pipeline.Plugins.Masking.Rules;

/// <summary>A mask goes on paint that is not hard enough to bear it.</summary>
public sealed class MaskTooSoon : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Tape, film and putty wait until the paint under them is hard enough.";

    /// <inheritdoc/>
    public override string Source => "common practice; the tape-mark test published in refinishing guides";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.Kind == StepKind.Masking;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        foreach (var deed in moment.Step.Deeds)
        {
            if (deed is not Deed.PutMaskOn { Material: { Kind: not MaskKind.Liquid } material })
                continue;
            foreach (var area in moment.Step.Areas)
            {
                foreach (var verdict in On(moment, area, material))
                    yield return verdict;
            }
        }
    }

    private static IEnumerable<Verdict> On(Moment moment, string area, MaskMaterial material)
    {
        var surface = moment.Before[area];
        // tape over tape touches no paint; on a bare decal it is wrong at any age, and another rule says so
        if (surface.IsMasked || (surface.Top?.Role == LayerRole.Decal && material.Kind != MaskKind.Cover))
            yield break;
        var isSealed = false;
        for (var i = surface.Layers.Count - 1; i >= 0; i--)
        {
            var layer = surface.Layers[i];
            // what lies under a decal or a sealed effect has been judged by what went over it
            if (layer.Role is LayerRole.Powder || (layer.IsSpiritEffect() && isSealed))
                continue;
            isSealed |= layer.Role == LayerRole.Varnish;
            if (material.Needs == DryingState.Cured)
            {
                // a strong tape needs mask-safe paint like any other; that it should be cured is caution
                if (Wait(moment, layer, DryingState.MaskSafe, area, material) is { } least)
                    yield return least;
                if (!StrongTapeOnWeakSkin.IsWeak(surface) && Wait(moment, layer, DryingState.Cured, area, material) is { } better)
                    yield return better with { Gravest = Level.Warning };
            }
            else if (Wait(moment, layer, material.Needs, area, material) is { } wait)
            {
                yield return wait;
            }
            else if (layer.IsSpirit())
            {
                yield return moment.Says(
                    Level.Error,
                    area,
                    $"{Capital(material.Name)} goes straight on {layer.Name} on {{areas}}, which never gets hard enough for it unsealed.",
                    $"Varnish {{areas}} once {layer.Name} has dried, then mask.",
                    new Pointer(layer.Step, $"{layer.Name} was laid here"))
                .MendedBy(moment.VarnishFirst(layer, Sheen.Satin));
            }
        }
    }

    private static Verdict.Needs? Wait(Moment moment, Layer layer, DryingState state, string area, MaskMaterial material) => moment.WaitsFor(
        layer, state, area, $"{Capital(material.Name)} put on sooner can lift {layer.Name}.", "Wait, or mask another piece first; lower tack is no cure.");

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
