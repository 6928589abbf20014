using Pipeline.Abstractions;

namespace Pipeline.Plugins.Safety.Rules;

/// <summary>Resin or board is sanded or cut dry where the file says that respirator or extraction are missing.</summary>
public sealed class DustWithoutProtection : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Harmful dust is bound with water, or extraction and a respirator keep it from the lungs.";

    /// <inheritdoc/>
    public override string Source => "common practice; the harm of wood dust is published in the EU directives on hardwood dust";

    /// <inheritdoc/>
    public override IEnumerable<BatchVerdict> JudgeBatch(BatchView batch) => batch.OncePerCause(moment =>
    {
        if (!IsDry(moment.Step) || (moment.Protection.Respirator != false && moment.Protection.Extraction != false) || Dusty(moment) is not { } material)
            return null;
        var missing = (moment.Protection.Respirator, moment.Protection.Extraction) switch
        {
            (false, false) => "a respirator and extraction",
            (false, _) => "a respirator",
            _ => "extraction",
        };
        return new Cause(
            material.Name,
            Level.Error,
            $"{material.Name} is worked dry without {missing}: the dust harms lungs.",
            material.IsPorous
                ? "Work it with extraction and a particle respirator that fits (P2 or P3); never wet. See the safety data sheet."
                : "Work it wet ('wet: yes') and wipe up, with a particle respirator that fits. See the safety data sheet.");
    });

    // sanding is dry unless the file says wet; a blade or drill makes dust only where the file says dry
    private static bool IsDry(Step step)
    {
        foreach (var deed in step.Deeds)
        {
            if (deed is Deed.Prepare { What: Preparation.Sanded, IsWet: not true }
                or Deed.Prepare { What: Preparation.Trimmed or Preparation.Drilled or Preparation.Cut, IsWet: false })
                return true;
        }

        return false;
    }

    private static Material? Dusty(Moment moment)
    {
        foreach (var area in moment.Step.Areas)
        {
            if (moment.Before[area] is { Material: { HarmfulDust: true } material })
                return material;
        }

        return null;
    }
}
