using Pipeline.Abstractions;

namespace Pipeline.Plugins.Masking.Rules;

/// <summary>Strong tape on bare alcohol metal, stain or paint without an undercoat.</summary>
public sealed class StrongTapeOnWeakSkin : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Standard tape stays off skins that are weaker than it.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.First<Deed.PutMaskOn>() is { Material.IsStrongTack: true };

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        var material = moment.Step.First<Deed.PutMaskOn>()!.Material;
        foreach (var area in moment.Step.Areas)
        {
            if (moment.Before[area] is not { IsMasked: false, Top: { } top } surface || !IsWeak(surface))
                continue;
            yield return moment.Says(
                Level.Warning, area, $"The skin of {top.Name} on {{areas}} is weaker than {material.Name}.", "Varnish it first, or take low-tack tape and draw it over clean plastic once.",
                new Pointer(top.Step, $"{top.Name} was laid here"))
                .MendedBy(moment.SetKey("using", "low-tack tape"));
        }
    }

    /// <summary>True if the top of a surface is weaker than a strong tape, however old it is.</summary>
    internal static bool IsWeak(Surface surface) => surface.Top is { } top
        && (top.IsAlcohol()
            || top.IsStain()
            || (top.IsWaterborne() && top.Role != LayerRole.Varnish && !surface.Has(LayerRole.Undercoat) && !surface.Has(LayerRole.Sealer)));
}
