using Pipeline.Abstractions;

namespace Pipeline.Plugins.Masking.Rules;

/// <summary>A coat is meant for an area that lies under a mask.</summary>
public sealed class PaintOverMask : AreaRule
{
    /// <inheritdoc/>
    public override string Summary => "A step paints nothing that lies under a mask, unless it sweeps over the whole part and the mask is there to save it.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.Coat() is not null;

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, string area, Surface surface)
    {
        if (!surface.IsMasked || surface.IsHidden || IsSweptOver(moment, area))
            return null;
        var mask = surface.Masks[^1];
        return moment.Says(
            Level.Error,
            area,
            $"The mask '{mask.Name}' lies on {{areas}}: the coat lands on the mask.",
            $"Take '{mask.Name}' off first, or leave {{areas}} out of this step.",
            new Pointer(mask.Step, $"'{mask.Name}' was put on here"))
            .MendedBy(AfterUnmasking(moment, mask));
    }

    // a step on nothing but masked areas belongs after the unmasking
    private static Mend? AfterUnmasking(Moment moment, MaskOn mask)
    {
        if (!moment.Step.Areas.All(area => moment.Before[area].IsMasked))
            return null;
        for (var i = moment.Step.Index + 1; i < moment.Route.Count; i++)
        {
            if (moment.At(i).Deeds.Any(deed => deed is Deed.TakeMaskOff off && off.Mask == mask.Name))
                return new Mend.MoveAfter(moment.Step.Place, moment.At(i).Place);
        }

        return null;
    }

    // "spray all" with the lens masked is what masks are for; naming the lens among a few areas is a slip
    private static bool IsSweptOver(Moment moment, string area)
    {
        var part = moment.Model.PartOf(area);
        var anyOpen = false;
        foreach (var other in moment.Model.Areas)
        {
            if (other.Part != part)
                continue;
            if (!moment.Step.Areas.Contains(other.Name))
                return false;
            anyOpen |= moment.Before[other.Name] is { IsMasked: false, IsHidden: false };
        }

        return anyOpen;
    }
}
