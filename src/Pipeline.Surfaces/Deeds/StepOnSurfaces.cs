using Pipeline.Abstractions;

namespace Pipeline.Surfaces.Deeds;

/// <summary>What a step makes of the surfaces: its deeds, one after the other.</summary>
internal static class StepOnSurfaces
{
    /// <summary>The surfaces after the step.</summary>
    /// <param name="before">The surfaces before it.</param>
    /// <param name="step">The step.</param>
    /// <param name="model">The model it is done to.</param>
    /// <param name="overspray">What the step's overspray reaches, see <see cref="Laying.Overspray"/>.</param>
    public static SurfaceMap After(SurfaceMap before, Step step, Model model, Sequence<string> overspray)
    {
        var surfaces = before;
        foreach (var deed in step.Deeds)
        {
            surfaces = deed switch
            {
                Deed.Prepare prepare => Preparing.Prepare(surfaces, step, prepare),
                Deed.Join join => Preparing.Join(surfaces, step, model, join),
                Deed.Lay lay => Laying.Lay(surfaces, step, lay),
                Deed.PutMaskOn mask => Masking.PutOn(surfaces, step, mask),
                Deed.TakeMaskOff mask => Masking.TakeOff(surfaces, mask),
                Deed.Strip strip => Removing.Strip(surfaces, step, strip),
                // cleaning back, softening, waiting and handling move what is there but leave the same layers
                _ => surfaces,
            };
        }

        return Laying.Dust(surfaces, step, overspray);
    }
}
