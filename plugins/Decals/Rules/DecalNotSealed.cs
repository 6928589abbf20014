using Pipeline.Abstractions;

namespace Pipeline.Plugins.Decals.Rules;

/// <summary>A decal that nothing lies over when the piece is finished.</summary>
public sealed class DecalNotSealed : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A decal is sealed before the piece is finished.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> JudgeRoute(WalkedSteps route)
    {
        foreach (var (area, surface) in route.AtTheEnd())
        {
            if (!surface.IsHidden && Bare(surface) is { } decal && !IsMaskedAfter(route, decal.Step, area))
            {
                yield return route.Moments[decal.Step].Says(
                    Level.Warning,
                    area,
                    "Nothing is laid over the decal of {areas} to the end: its edges lift with handling, and its film shows.",
                    "Varnish it when it has dried, with the sheen the piece is to have.");
            }
        }
    }

    // tape on a bare decal is another rule's
    private static bool IsMaskedAfter(WalkedSteps route, int step, string area) =>
        route.Moments.Any(moment => moment.Step.Index > step && moment.Step.Areas.Contains(area) && moment.Step.First<Deed.PutMaskOn>() is { Material.Kind: not MaskKind.Cover });

    // a wash on a bare decal is another rule's; powder and tufts seal nothing
    private static Layer? Bare(Surface surface)
    {
        for (var i = surface.Layers.Count - 1; i >= 0; i--)
        {
            if (surface.Layers[i].Role == LayerRole.Decal)
                return surface.Layers[i];
            if (surface.Layers[i].Role is not (LayerRole.Powder or LayerRole.Scatter))
                return null;
        }

        return null;
    }
}
