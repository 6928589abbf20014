using Pipeline.Abstractions;

namespace Pipeline.Surfaces.Deeds;

/// <summary>Putting masks on and taking them off.</summary>
internal static class Masking
{
    public static SurfaceMap PutOn(SurfaceMap surfaces, Step step, Deed.PutMaskOn deed)
    {
        var mask = new MaskOn { Name = deed.Mask, Step = step.Index, Material = deed.Material };
        return surfaces.With(step.Areas, surface => surface with { Masks = surface.Masks.With(mask) });
    }

    /// <summary>Takes a mask off wherever it lies, and with it what was laid on it.</summary>
    public static SurfaceMap TakeOff(SurfaceMap surfaces, Deed.TakeMaskOff deed) =>
        surfaces.With(AreasUnder(surfaces, deed.Mask), surface => surface with { Masks = surface.Masks.Without(mask => mask.Name == deed.Mask) });

    /// <summary>The areas on which a mask of that name lies.</summary>
    public static Sequence<string> AreasUnder(SurfaceMap surfaces, string mask)
    {
        var areas = new List<string>();
        foreach (var area in surfaces.Areas)
        {
            foreach (var on in surfaces[area].Masks)
            {
                if (on.Name != mask)
                    continue;
                areas.Add(area);
                break;
            }
        }

        return areas.ToSequence();
    }
}
