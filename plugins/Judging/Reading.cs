using Pipeline.Abstractions;

namespace Pipeline.Plugins;

/// <summary>What rules ask of layers, surfaces and steps.</summary>
internal static class Reading
{
    /// <summary>Each area as it is when all steps are done; none where there are no steps.</summary>
    public static IEnumerable<(string Area, Surface Surface)> AtTheEnd(this WalkedSteps route) =>
        route.Moments.IsEmpty ? [] : route.Moments[^1].After.Areas.Select(area => (area, route.Moments[^1].After[area]));

    /// <summary>The areas a coat lands on: named, neither masked nor hidden.</summary>
    public static Sequence<string> Reached(this Moment moment)
    {
        // nearly always it lands on all of them, and every rule about coats asks
        foreach (var area in moment.Step.Areas)
        {
            if (!moment.IsReached(area))
                return moment.Step.Areas.Without(named => !moment.IsReached(named));
        }

        return moment.Step.Areas;
    }

    private static bool IsReached(this Moment moment, string area) => moment.Before[area] is { IsMasked: false, IsHidden: false };

    /// <summary>The coat a step lays, or null. A step lays one kind of coat.</summary>
    public static Layer? Coat(this Step step)
    {
        // every rule about coats asks this of every step
        var deeds = step.Deeds;
        for (var i = 0; i < deeds.Count; i++)
        {
            if (deeds[i] is Deed.Lay lay)
                return lay.Layer;
        }

        return null;
    }

    /// <summary>The first deed of a kind, or null.</summary>
    public static T? First<T>(this Step step)
        where T : Deed
    {
        foreach (var deed in step.Deeds)
        {
            if (deed is T found)
                return found;
        }

        return null;
    }

    /// <summary>Laid with strong solvent: lacquers and lacquer varnishes.</summary>
    public static bool IsHot(this Layer layer) => layer.Family?.Carrier == Carrier.Solvent;

    /// <summary>Carried by spirit: enamels and oils, effects of them too.</summary>
    public static bool IsSpirit(this Layer layer) => layer.Family?.Carrier == Carrier.Spirit && layer.Role != LayerRole.Powder;

    /// <summary>Carried by alcohol.</summary>
    public static bool IsAlcohol(this Layer layer) => layer.Family?.Carrier == Carrier.Alcohol;

    /// <summary>A paint, varnish, stain or sealer carried by water; no decal, no texture.</summary>
    public static bool IsWaterborne(this Layer layer) =>
        layer.Family?.Carrier == Carrier.Water && layer.Role is not (LayerRole.Decal or LayerRole.Texture or LayerRole.Powder or LayerRole.Scatter);

    /// <summary>An ink or staining paint, whichever verb lays it.</summary>
    public static bool IsStain(this Layer layer) => layer.Technique == Technique.Stain || layer.Family?.Name == "stain";

    /// <summary>A very thin effect of enamel or oil, judged by its own times and not as a coat.</summary>
    public static bool IsSpiritEffect(this Layer layer) => layer.Role == LayerRole.Effect && layer.IsSpirit();

    /// <summary>Sprayed or brushed, but more than dusted on.</summary>
    public static bool IsWet(this Layer layer) => layer.Body != Body.Mist;

    /// <summary>Dabbed or drawn on almost dry: hardly any thinner comes with it.</summary>
    public static bool IsDabbed(this Layer layer) => layer.Technique is Technique.Sponge or Technique.DryBrush;

    /// <summary>Put on with a spray gun, an airbrush or a can.</summary>
    public static bool IsSprayed(this Layer layer) => layer.Method is Method.Airbrush or Method.Aerosol;

    /// <summary>The highest layer that is no thin spirit effect, or null.</summary>
    public static Layer? TopCoat(this Surface surface)
    {
        for (var i = surface.Layers.Count - 1; i >= 0; i--)
        {
            if (!surface.Layers[i].IsSpiritEffect())
                return surface.Layers[i];
        }

        return null;
    }

    /// <summary>The highest layer that covers: no effect, no decal, not only dabbed or dry-brushed on. Null on a bare surface.</summary>
    public static Layer? Ground(this Surface surface)
    {
        for (var i = surface.Layers.Count - 1; i >= 0; i--)
        {
            if (surface.Layers[i] is { Role: not (LayerRole.Effect or LayerRole.Decal), Technique: not (Technique.Sponge or Technique.DryBrush) } covers)
                return covers;
        }

        return null;
    }

    /// <summary>The part an area belongs to.</summary>
    public static string PartOf(this Model model, string area)
    {
        foreach (var candidate in model.Areas)
        {
            if (candidate.Name == area)
                return candidate.Part;
        }

        return "";
    }

    /// <summary>Names as people list them.</summary>
    public static string Spoken(this IReadOnlyList<string> names) => names.Count switch
    {
        0 => "",
        1 => names[0],
        _ => string.Join(", ", names.Take(names.Count - 1)) + " and " + names[^1],
    };
}
