using Pipeline.Abstractions;

namespace Pipeline.Plugins.Masking.Rules;

/// <summary>A mask is pulled from under another.</summary>
public sealed class MaskOrder : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Where masks overlap, the last one on comes off first.";

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
        }
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
