using Pipeline.Abstractions;

namespace Pipeline.Plugins.Masking.Rules;

/// <summary>A mask stays on until its glue or its oil gets into the paint.</summary>
public sealed class MaskOnTooLong : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A mask comes off before its time is up.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.Kind == StepKind.Removal;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        foreach (var area in moment.Before.Areas)
        {
            foreach (var mask in moment.Before[area].Masks)
            {
                if (mask.Material.TimeOn is not { } timeOn || !IsTakenOff(moment.Step, mask.Name))
                    continue;
                yield return new Verdict.Needs
                {
                    Step = moment.Step.Index,
                    Since = mask.Step,
                    Span = new Span.AtMost(timeOn, mask.Material.HardLimit),
                    IsFromLabel = mask.Material.IsFromFile,
                    For = $"{mask.Material.Name} off",
                    Areas = [area],
                    Message = $"{mask.Material.Name} left on longer leaves residue or takes paint with it.",
                    Remedy = "Mask and unmask in the same sitting, or the next day.",
                };
            }
        }
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
