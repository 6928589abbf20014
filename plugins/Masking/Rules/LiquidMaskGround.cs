using Pipeline.Abstractions;

namespace Pipeline.Plugins.Masking.Rules;

/// <summary>Liquid mask on a surface that it bonds to.</summary>
public sealed class LiquidMaskGround : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Liquid mask goes on sealed, smooth and cured paint.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.First<Deed.PutMaskOn>() is { Material.Kind: MaskKind.Liquid };

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        var material = moment.Step.First<Deed.PutMaskOn>()!.Material;
        foreach (var area in moment.Step.Areas)
        {
            var surface = moment.Before[area];
            if (surface.IsMasked)
                continue;
            var top = surface.Top;
            var why = top switch
            {
                { Role: LayerRole.Powder } => $"it takes the {top.Name} with it",
                { Role: LayerRole.Texture } => $"it bonds to the rough {top.Name}",
                { IsMetallic: true } when top.IsAlcohol() => $"it brings {top.Name} off, which nothing seals",
                _ when surface.Material.IsPorous && !IsClosed(surface) => $"it bonds to unsealed {surface.Material.Name}",
                _ => null,
            };
            if (why is not null)
                yield return moment.Says(Level.Error, area, $"{material.Name} on {{areas}} does not come off clean: {why}.", "Seal {areas} first, or mask with film.");
            else if (top is { Role: not LayerRole.Decal } && moment.WaitsFor(top, material.Needs, area, $"{material.Name} bonds to {top.Name} that has not cured.", "Wait, or mask with film.") is { } wait)
                yield return wait;
        }
    }

    private static bool IsClosed(Surface surface)
    {
        foreach (var layer in surface.Layers)
        {
            if (layer.Role is LayerRole.Sealer or LayerRole.Varnish)
                return true;
        }

        return false;
    }
}
