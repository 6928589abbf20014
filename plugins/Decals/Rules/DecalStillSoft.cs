using Pipeline.Abstractions;

namespace Pipeline.Plugins.Decals.Rules;

/// <summary>A decal varnished, masked, washed or handled while it is soft.</summary>
public sealed class DecalStillSoft : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A decal has dried before anything goes over it or touches it.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        if (moment.Step.First<Deed.SoftenDecal>() is not null)
        {
            foreach (var area in moment.Step.Areas)
            {
                if (Decal(moment.Before[area]) is { } seated
                    && moment.WaitsFor(seated, DryingState.TouchDry, area, "A decal that has not seated folds under softener.", "Let it seat first.") is { } wait)
                    yield return wait;
            }

            yield break;
        }

        // an effect or a mask on a bare decal is wrong at any age, and another rule says so
        var isCoat = moment.Step.Coat() is { Role: not (LayerRole.Decal or LayerRole.Effect) };
        if (!isCoat && moment.Step.First<Deed.Handle>() is null && moment.Step.First<Deed.Join>() is null)
            yield break;
        foreach (var area in moment.Step.Areas)
        {
            var surface = moment.Before[area];
            if (surface.IsMasked || surface.Top is not { Role: LayerRole.Decal } decal)
                continue;
            var wetted = LastWetted(moment, area, decal.Step);
            if (moment.WaitsFor(decal with { Step = wetted }, DryingState.Recoatable, area, "A decal that is still soft wrinkles or tears.", "Leave it overnight.") is { } dry)
                yield return dry;
        }
    }

    private static Layer? Decal(Surface surface) => surface.Top is { Role: LayerRole.Decal } decal ? decal : null;

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
