using Pipeline.Abstractions;

namespace Pipeline.Surfaces.Deeds;

/// <summary>Laying something that dries, and where its overspray goes.</summary>
internal static class Laying
{
    public static SurfaceMap Lay(SurfaceMap surfaces, Step step, Deed.Lay deed)
    {
        var layer = deed.Layer with { Step = step.Index };
        return surfaces.With(step.Areas, surface => Take(surface, layer));
    }

    /// <summary>
    /// What a sprayed step reaches besides the areas it names: unmasked and not hidden, of the same pieces. Empty for a step that
    /// sprays nothing.
    /// </summary>
    public static Sequence<string> Overspray(SurfaceMap before, Step step, Model model, Pieces pieces)
    {
        if (!IsSprayed(step))
            return [];
        var reached = new List<string>();
        foreach (var area in model.Areas)
        {
            if (!step.Areas.Contains(area.Name)
                && before[area.Name] is { IsMasked: false, IsHidden: false }
                && pieces.IsBeside(area.Name, step.Areas, step.Index))
            {
                reached.Add(area.Name);
            }
        }

        return reached.ToSequence();
    }

    /// <summary>Notes the step's overspray on what it reached.</summary>
    public static SurfaceMap Dust(SurfaceMap surfaces, Step step, Sequence<string> reached) =>
        surfaces.With(reached, surface => surface with { Overspray = surface.Overspray.With(step.Index) });

    /// <summary>True if the step sprays something that stays.</summary>
    public static bool IsSprayed(Step step)
    {
        foreach (var deed in step.Deeds)
        {
            if (deed is Deed.Lay { Layer.Method: Method.Airbrush or Method.Aerosol })
                return true;
        }

        return false;
    }

    // a coat to a masked area stays on the mask; a hidden area takes none
    private static Surface Take(Surface surface, Layer layer)
    {
        if (surface.IsHidden)
            return surface;
        if (!surface.IsMasked)
            return surface with { Layers = surface.Layers.With(layer) };
        var top = surface.Masks[^1];
        return surface with { Masks = surface.Masks.Without(mask => ReferenceEquals(mask, top)).With(top with { Layers = top.Layers.With(layer) }) };
    }
}
