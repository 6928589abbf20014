using Pipeline.Abstractions;

namespace Pipeline.Plugins.Masking.Rules;

/// <summary>A mask is pulled from under another, or off one that is still needed.</summary>
public sealed class MaskOrder : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Where masks overlap, the last one on comes off first, and takes none with it that is still needed.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.Kind == StepKind.Removal;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        foreach (var area in moment.Before.Areas)
        {
            var masks = moment.Before[area].Masks;
            for (var i = 0; i + 1 < masks.Count; i++)
            {
                if (!IsTakenOff(moment.Step, masks[i].Name) || StaysAbove(moment.Step, masks, i) is not { } upper)
                    continue;
                yield return moment.Says(
                    Level.Error,
                    area,
                    $"'{masks[i].Name}' is pulled from under '{upper.Name}', which still lies over it on {{areas}}.",
                    $"Take '{upper.Name}' off first.",
                    new Pointer(upper.Step, $"'{upper.Name}' was put over it here"))
                .MendedBy(UpperFirst(moment, upper));
            }

            for (var i = 1; i < masks.Count; i++)
            {
                // a cover is laid on, not stuck down
                if (masks[i].Material.Kind == MaskKind.Cover || !IsTakenOff(moment.Step, masks[i].Name) || StillNeeded(moment, area, masks, i) is not var (lower, coat))
                    continue;
                yield return moment.Says(
                    Level.Error,
                    area,
                    $"Pulling '{masks[i].Name}' tears '{lower.Name}' under it on {{areas}}, which is still needed for {coat.Name}.",
                    $"Lay that coat while both are on, or take '{lower.Name}' off as well and mask anew.",
                    new Pointer(lower.Step, $"'{lower.Name}' was put on here"),
                    new Pointer(coat.Step, "it has to keep this off"));
            }
        }
    }

    // the nearest mask under another that stays on while it has still something to keep off
    private static (MaskOn Lower, Layer Coat)? StillNeeded(Moment moment, string area, Sequence<MaskOn> masks, int above)
    {
        for (var i = above - 1; i >= 0; i--)
        {
            if (masks[i].Name == masks[above].Name || IsTakenOff(moment.Step, masks[i].Name))
                continue;
            return FirstCoatBeside(moment, area, masks[i].Name) is { } coat ? (masks[i], coat) : null;
        }

        return null;
    }

    // brushed on the area itself or sprayed anywhere on its piece, before the mask comes off
    private static Layer? FirstCoatBeside(Moment moment, string area, string mask)
    {
        for (var i = moment.Step.Index + 1; i < moment.Route.Count; i++)
        {
            var step = moment.At(i);
            if (IsTakenOff(step, mask))
                return null;
            if (step.Coat() is { } coat && (step.Areas.Contains(area) || (coat.IsSprayed() && moment.Pieces.IsBeside(area, step.Areas, i))))
                return coat with { Step = i };
        }

        return null;
    }

    // the step that takes the upper one off later comes up; else there is none yet
    private static Mend UpperFirst(Moment moment, MaskOn upper)
    {
        for (var i = moment.Step.Index + 1; i < moment.Route.Count; i++)
        {
            if (IsTakenOff(moment.At(i), upper.Name))
                return new Mend.MoveBefore(moment.At(i).Place, moment.Step.Place);
        }

        return new Mend.PutBefore(moment.Step.Place, new NewStep("unmask", new Acting.MaskOf(moment.At(upper.Step).Place)));
    }

    private static MaskOn? StaysAbove(Step step, Sequence<MaskOn> masks, int below)
    {
        for (var i = below + 1; i < masks.Count; i++)
        {
            if (masks[i].Name != masks[below].Name && !IsTakenOff(step, masks[i].Name))
                return masks[i];
        }

        return null;
    }

    private static bool IsTakenOff(Step step, string mask)
    {
        foreach (var deed in step.Deeds)
        {
            if (deed is Deed.TakeMaskOff off && off.Mask == mask)
                return true;
        }

        return false;
    }
}
