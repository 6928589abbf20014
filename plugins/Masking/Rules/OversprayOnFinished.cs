using Pipeline.Abstractions;

namespace Pipeline.Plugins.Masking.Rules;

/// <summary>Spray reaches a finished neighbour that nothing covers.</summary>
public sealed class OversprayOnFinished : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A finished area is covered, or meant to be reached, when something beside it is sprayed.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> JudgeRoute(WalkedSteps route)
    {
        foreach (var moment in route.Moments)
        {
            if (moment.Overspray.IsEmpty || moment.Step.First<Deed.Lay>() is not { } lay)
                continue;
            foreach (var area in moment.Overspray)
            {
                if (lay.OversprayMeant.Contains(area) || lay.OversprayMeant.Contains("all"))
                    continue;
                if (IsHarmedBy(moment.Before[area], lay.Layer) && !IsCoveredLater(route, moment.Step.Index, area, lay.Layer))
                {
                    var (last, coat) = LastCoat(route, moment, area);
                    yield return moment.Says(
                        Level.Warning,
                        area,
                        $"{{areas}} has its {coat} already, and the spray of {lay.Layer.Name} reaches it.",
                        "Mask {areas}, spray first and paint {areas} after it, or say 'overspray: {areas}' if it is meant.",
                        new Pointer(last.Step, $"it got its {coat} here"));
                }
            }
        }
    }

    // a wash, dry-brushing or varnish may still follow on the last colour
    private static (Layer Last, string InWords) LastCoat(WalkedSteps route, Moment moment, string area)
    {
        var surface = moment.Before[area];
        for (var i = surface.Layers.Count - 1; i >= 0 && IsLaidOnLater(route, moment.Step.Index, area); i--)
        {
            if (surface.Layers[i].Role == LayerRole.Colour)
                return (surface.Layers[i], "last coat of colour");
        }

        return (surface.Top!, "last coat");
    }

    private static bool IsLaidOnLater(WalkedSteps route, int step, string area)
    {
        for (var i = step + 1; i < route.Moments.Count; i++)
        {
            if (route.Moments[i].Step.First<Deed.Lay>() is not null && route.Moments[i].Step.Areas.Contains(area)
                && route.Moments[i].Before[area] is { IsMasked: false, IsHidden: false })
            {
                return true;
            }
        }

        return false;
    }

    // an undercoat or a sealer is no finish; clear of the same sheen leaves no trace
    private static bool IsHarmedBy(Surface surface, Layer spray)
    {
        var isFinished = false;
        foreach (var layer in surface.Layers)
            isFinished |= layer.Role is LayerRole.Colour or LayerRole.Effect or LayerRole.Decal or LayerRole.Varnish;
        if (!isFinished)
            return false;
        var isClear = spray.Role == LayerRole.Varnish;
        return isClear ? surface.Sheen != spray.Sheen : surface.Top!.Name != spray.Name;
    }

    private static bool IsCoveredLater(WalkedSteps route, int step, string area, Layer spray)
    {
        for (var i = step + 1; i < route.Moments.Count; i++)
        {
            if (!route.Moments[i].Step.Areas.Contains(area) || route.Moments[i].Before[area] is { IsMasked: true } or { IsHidden: true })
                continue;
            foreach (var deed in route.Moments[i].Step.Deeds)
            {
                if (deed is Deed.Strip)
                    return true;
                if (deed is not Deed.Lay { Layer: var later })
                    continue;
                if (later.Role is LayerRole.Colour or LayerRole.Undercoat or LayerRole.Texture && later.Technique is not (Technique.Sponge or Technique.DryBrush))
                    return true;
                if (spray.Role == LayerRole.Varnish && later.Role == LayerRole.Varnish)
                    return true;
            }
        }

        return false;
    }
}
