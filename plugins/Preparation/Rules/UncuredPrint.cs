using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>Paint on a print that has not been post-cured.</summary>
public sealed class UncuredPrint : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "A resin print is cured through, and rid of its solvent, before it is painted.";

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        if (!surface.Material.NeedsPostCure || surface.Top is not null)
            return null;
        if (surface.Has(Preparation.PostCured))
            return LastBath(surface) is { } bath ? SolventGone(moment, bath, area) : null;
        return moment.Says(
            Level.Error,
            area,
            $"{coat.Name} goes on {surface.Material.Name} that was never post-cured: resin under the paint on {{areas}} works its way out.",
            "Add 'post-cure: all' after washing and drying, before the first coat.")
            .MendedBy(Cure(moment));
    }

    private static PreparationDone? LastBath(Surface surface)
    {
        PreparationDone? last = null;
        foreach (var done in surface.Preparations)
        {
            if (done is { What: Preparation.Washed, Settles: not null, Carrier: not (Carrier.Water or Carrier.None) })
                last = done;
        }

        return last;
    }

    private static Verdict.Needs SolventGone(Moment moment, PreparationDone bath, string area) => new()
    {
        Step = moment.Step.Index,
        Since = bath.Step,
        Span = new Span.AtLeast(bath.Settles!.Value),
        Carrier = bath.Carrier,
        IsFromLabel = bath.IsFromFile,
        For = "solvent gone",
        Areas = [area],
        Message = "Solvent of the bath is still in the print and works its way out through the paint.",
        Remedy = "Leave it to dry after the bath, then cure and paint it.",
        Related = [new Pointer(bath.Step, "the bath was here")],
    };

    private static Mend Cure(Moment moment)
    {
        var cure = new NewStep("post-cure", new Acting.All());
        for (var i = moment.Step.Index - 1; i >= 0; i--)
        {
            if (moment.At(i).First<Deed.Prepare>() is { What: Preparation.Washed })
                return new Mend.PutAfter(moment.At(i).Place, cure);
        }

        return new Mend.PutBefore(moment.Step.Place, cure);
    }
}
