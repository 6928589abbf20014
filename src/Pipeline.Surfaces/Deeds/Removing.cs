using Pipeline.Abstractions;

namespace Pipeline.Surfaces.Deeds;

/// <summary>Taking layers off.</summary>
internal static class Removing
{
    /// <summary>
    /// Down to the bare material. What was done to the material itself lasts (cut, trimmed, post-cured, glued, filled); cleanness does not,
    /// because stripper is left in every fold.
    /// </summary>
    public static SurfaceMap Strip(SurfaceMap surfaces, Step step, Deed.Strip deed)
    {
        var stripped = new PreparationDone(Preparation.Stripped, step.Index, deed.Settles, deed.Dissolves) { IsFromFile = deed.IsFromFile };
        return surfaces.With(step.Areas, surface => surface with
        {
            Layers = [],
            Overspray = [],
            Preparations = surface.Preparations.Without(done => done.What is Preparation.Washed or Preparation.Stripped).With(stripped),
        });
    }
}
