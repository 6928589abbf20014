using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>Paint on a print that has not been post-cured.</summary>
public sealed class UncuredPrint : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "A resin print is cured through before it is painted.";

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        if (!surface.Material.NeedsPostCure || surface.Top is not null || surface.Has(Preparation.PostCured))
            return null;
        return moment.Says(
            Level.Error,
            area,
            $"{coat.Name} goes on {surface.Material.Name} that was never post-cured: resin under the paint on {{areas}} works its way out.",
            "Add 'post-cure: all' after washing and drying, before the first coat.")
            .MendedBy(Cure(moment));
    }

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
