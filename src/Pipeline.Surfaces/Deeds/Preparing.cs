using Pipeline.Abstractions;

namespace Pipeline.Surfaces.Deeds;

/// <summary>Work on the piece itself.</summary>
internal static class Preparing
{
    public static SurfaceMap Prepare(SurfaceMap surfaces, Step step, Deed.Prepare deed)
    {
        var done = new PreparationDone(deed.What, step.Index, deed.Settles, deed.Carrier) { IsFromFile = deed.IsFromFile };
        return surfaces.With(step.Areas, surface => surface with { Preparations = surface.Preparations.With(done) });
    }

    public static SurfaceMap Join(SurfaceMap surfaces, Step step, Model model, Deed.Join deed)
    {
        var done = new PreparationDone(Preparation.Joined, step.Index, deed.Settles, deed.Carrier) { IsFromFile = deed.IsFromFile };
        return surfaces
            .With(AreasOf(model, deed.Parts), surface => surface with { Preparations = surface.Preparations.With(done) })
            .With(deed.Hides, surface => surface with { IsHidden = true });
    }

    /// <summary>All areas of some parts.</summary>
    public static Sequence<string> AreasOf(Model model, Sequence<string> parts)
    {
        var areas = new List<string>();
        foreach (var area in model.Areas)
        {
            if (parts.Contains(area.Part))
                areas.Add(area.Name);
        }

        return areas.ToSequence();
    }
}
