using Pipeline.Abstractions;

namespace Pipeline.Plugins.Decals.Rules;

/// <summary>A wash, an effect or a mask on a decal that nothing seals.</summary>
public sealed class BareDecalWorked : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A decal is sealed before it is washed, weathered or masked.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.Coat()?.Role == LayerRole.Effect || Masking(step) is not null;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        var coat = moment.Step.Coat();
        var masks = Masking(moment.Step)?.Name;
        foreach (var area in moment.Reached())
        {
            if (moment.Before[area].Top is not { Role: LayerRole.Decal } decal)
                continue;
            yield return moment.Says(
                Level.Error,
                area,
                $"{masks ?? coat!.Name} on the bare decal of {{areas}} lifts it or silvers its edges.",
                "Varnish the decal first, and let it dry.",
                new Pointer(decal.Step, "the decal was put on here"))
                .MendedBy(moment.VarnishFirst(decal, Sheen.Satin));
        }
    }

    // a cover touches nothing
    private static MaskMaterial? Masking(Step step) => step.First<Deed.PutMaskOn>() is { Material: { Kind: not MaskKind.Cover } material } ? material : null;
}
