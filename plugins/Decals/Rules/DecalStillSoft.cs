using Pipeline.Abstractions;

namespace Pipeline.Plugins.Decals.Rules;

/// <summary>A decal varnished, masked, washed or handled while it is soft.</summary>
public sealed class DecalStillSoft : AreaRule
{
    /// <inheritdoc/>
    public override string Summary => "A decal has dried before anything goes over it or touches it.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) =>
        // an effect or a mask on a bare decal is wrong at any age, and another rule says so
        step.Coat() is { Role: not (LayerRole.Decal or LayerRole.Effect) }
        || step.First<Deed.SoftenDecal>() is not null || step.First<Deed.Handle>() is not null || step.First<Deed.Join>() is not null;

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, string area, Surface surface)
    {
        if (surface.Top is not { Role: LayerRole.Decal } decal)
            return null;
        if (moment.Step.First<Deed.SoftenDecal>() is not null)
            return moment.WaitsFor(decal, DryingState.TouchDry, area, "A decal that has not seated folds under softener.", "Let it seat first.");
        if (surface.IsMasked)
            return null;
        var wetted = decal with { Step = LastWetted(moment, area, decal.Step) };
        return moment.WaitsFor(wetted, DryingState.Recoatable, area, "A decal that is still soft wrinkles or tears.", "Leave it overnight.");
    }

    // softener wets it again
    private static int LastWetted(Moment moment, string area, int laid)
    {
        for (var i = moment.Step.Index - 1; i > laid; i--)
        {
            if (moment.At(i).First<Deed.SoftenDecal>() is not null && moment.At(i).Areas.Contains(area))
                return i;
        }

        return laid;
    }
}
