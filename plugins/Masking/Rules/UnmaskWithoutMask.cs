using Pipeline.Abstractions;

namespace Pipeline.Plugins.Masking.Rules;

/// <summary>A mask is taken off that is not on.</summary>
public sealed class UnmaskWithoutMask : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Only a mask that is on is taken off.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.Kind == StepKind.Removal;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        foreach (var deed in moment.Step.Deeds)
        {
            if (deed is Deed.TakeMaskOff off && !IsOn(moment.Before, off.Mask))
            {
                yield return moment.Says(
                    Level.Error,
                    moment.Step.Areas,
                    $"The mask '{off.Mask}' is not on at this point.",
                    "Put the mask on before it, or take this step out.",
                    TakenOffEarlier(moment, off.Mask))
                .MendedBy(Superfluous(moment, off));
            }
        }
    }

    // a mask that came off before is no longer there to be taken off; one that never went on may have been forgotten
    private static Mend? Superfluous(Moment moment, Deed.TakeMaskOff off) =>
        moment.Step.Deeds.Count == 1 && TakenOffEarlier(moment, off.Mask).Length > 0 ? new Mend.TakeOut(moment.Step.Place) : null;

    private static bool IsOn(SurfaceMap surfaces, string mask)
    {
        foreach (var area in surfaces.Areas)
        {
            foreach (var on in surfaces[area].Masks)
            {
                if (on.Name == mask)
                    return true;
            }
        }

        return false;
    }

    private static Pointer[] TakenOffEarlier(Moment moment, string mask)
    {
        for (var i = moment.Step.Index - 1; i >= 0; i--)
        {
            if (moment.At(i).Deeds.Any(deed => deed is Deed.TakeMaskOff off && off.Mask == mask))
                return [new Pointer(i, "it was already taken off here")];
        }

        return [];
    }
}
