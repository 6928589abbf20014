using Pipeline.Abstractions;

namespace Pipeline.Plugins.Varnish.Rules;

/// <summary>A lens, a wet spot or another detail that is finished in gloss goes under a duller varnish.</summary>
public sealed class ShineVarnishedDull : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A detail finished in gloss is not varnished satin or matt.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> JudgeRoute(WalkedSteps route)
    {
        foreach (var moment in route.Moments)
        {
            if (moment.Step.Coat() is not { Role: LayerRole.Varnish, Sheen: < Sheen.Gloss } varnish)
                continue;
            var reached = moment.Reached();
            foreach (var area in reached)
            {
                if (moment.Before[area].Sheen < Sheen.Gloss || ShinesAgain(route, moment.Step.Index, area))
                    continue;
                if (Shining(moment, route.Moments[^1].After, reached, area, varnish) is not { } shine)
                    continue;
                yield return moment.Says(
                    Level.Warning,
                    area,
                    $"{varnish.Name} ({Word(varnish.Sheen)}) takes the shine off {{areas}}, finished in gloss with {shine.Name}.",
                    "Mask {areas}, leave {areas} out of this step, or lay the gloss after it.",
                    new Pointer(shine.Step, $"the shine of {shine.Name} was laid here"));
            }
        }
    }

    private static string Word(Sheen sheen) => sheen == Sheen.Matt ? "matt" : "satin";

    // shines later, or is painted over or stripped, so that its shine was not the finish
    private static bool ShinesAgain(WalkedSteps route, int step, string area)
    {
        for (var i = step; i < route.Moments.Count; i++)
        {
            var after = route.Moments[i].After[area];
            if (after.Sheen >= Sheen.Gloss || after.Layers.IsEmpty || (i > step && after.Top is { } top && top.Step == i && top.Covers()))
                return true;
        }

        return false;
    }

    /// <summary>The layer that gives a finished shine; null where nothing was meant to shine, or where gloss only served as a ground.</summary>
    private static Layer? Shining(Moment moment, SurfaceMap finished, Sequence<string> dulled, string area, Layer varnish)
    {
        var surface = moment.Before[area];
        var isMetal = surface.ShiningMetal() is not null;
        switch (moment.Model.AreaNamed(area)?.Shines)
        {
            case false:
                return null;
            // matt over metal is another rule's
            case true:
                return isMetal && varnish.Sheen == Sheen.Matt ? null : surface.Top;
            default:
                return isMetal ? null : Detail(moment, finished, dulled, surface);
        }
    }

    private static Layer? Detail(Moment moment, SurfaceMap finished, Sequence<string> dulled, Surface surface)
    {
        for (var i = surface.Layers.Count - 1; i >= 0; i--)
        {
            var layer = surface.Layers[i];
            if (layer.Sheen < Sheen.Gloss)
                return null;
            if (layer.Role == LayerRole.Varnish)
            {
                // gloss under or over a decal or an effect is a ground or a seal; gloss all over before matt is protection
                if (i > 0 && surface.Layers[i - 1].Role is LayerRole.Decal or LayerRole.Effect)
                    return null;
                if (!IsGround(moment, finished, layer.Step) && dulled.Any(other => !moment.At(layer.Step).Areas.Contains(other)))
                    return layer;
            }
            else if (layer.Role == LayerRole.Colour)
            {
                return IsGround(moment, finished, layer.Step) || IsGlossAllOver(moment, dulled) ? null : layer;
            }
            else
            {
                return null;
            }
        }

        return null;
    }

    // on some area a decal or an effect lies in the end on what the step laid, with at most varnish between
    private static bool IsGround(Moment moment, SurfaceMap finished, int step)
    {
        foreach (var area in moment.At(step).Areas)
        {
            var layers = finished[area].Layers;
            for (var i = layers.Count - 1; i > 0; i--)
            {
                if (layers[i].Role is not (LayerRole.Decal or LayerRole.Effect))
                    continue;
                for (var under = i - 1; under >= 0; under--)
                {
                    if (layers[under].Step == step)
                        return true;
                    if (layers[under].Role != LayerRole.Varnish)
                        break;
                }
            }
        }

        return false;
    }

    // what one sweep dulls was gloss paint all over; beside metal, or by itself, gloss is a detail
    private static bool IsGlossAllOver(Moment moment, Sequence<string> dulled)
    {
        foreach (var area in dulled)
        {
            if (moment.Before[area].Sheen < Sheen.Gloss || moment.Before[area].ShiningMetal() is not null)
                return false;
        }

        // one gloss area alone may be a lens, but not if it is most of the piece
        return dulled.Count > 1 || moment.SizeOf(dulled) * 2 >= moment.Model.Size.SquareCentimetres;
    }
}
