using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>Fibreboard under colour with a single coat of sealer.</summary>
public sealed class SealedOnce : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Fibreboard gets two coats of sealer before colour.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> JudgeRoute(WalkedSteps route)
    {
        foreach (var (area, surface) in route.AtTheEnd())
        {
            if (surface.Material.Name != "fibreboard" || OnlySealer(surface) is not { } sealer)
                continue;
            yield return route.Moments[sealer.Step].Says(
                Level.Note,
                area,
                "One coat of sealer is laid on the fibreboard of {areas}: the cut edges drink it and stay fuzzy under the paint.",
                "Say 'coats: 2', or seal again after sanding; if there are no cut edges in sight, one will do.");
        }
    }

    // the one coat that closes what is coloured later; a bed of paste or a varnish closes it as well
    private static Layer? OnlySealer(Surface surface)
    {
        Layer? only = null;
        foreach (var layer in surface.Layers)
        {
            switch (layer.Role)
            {
                case LayerRole.Sealer when only is null && layer.Coats == 1:
                    only = layer;
                    break;
                case LayerRole.Sealer or LayerRole.Texture or LayerRole.Varnish:
                    return null;
                case LayerRole.Colour or LayerRole.Effect:
                    return only;
            }
        }

        return null;
    }
}
