using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>Paint on a print that has not been post-cured.</summary>
public sealed class UncuredPrint : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A resin print is cured through before it is painted.";

    /// <inheritdoc/>
    public override StepKind? OnlyKind => StepKind.Coat;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        if (moment.Step.Kind != StepKind.Coat || moment.Step.Coat() is not { } coat)
            yield break;
        foreach (var area in moment.Reached())
        {
            var surface = moment.Before[area];
            if (!surface.Material.NeedsPostCure || surface.Top is not null || surface.Has(Preparation.PostCured))
                continue;
            yield return moment.Says(
                Level.Error,
                area,
                $"{coat.Name} goes on {surface.Material.Name} that was never post-cured: resin under the paint on {{areas}} works its way out.",
                "Add 'post-cure: all' after washing and drying, before the first coat.")
                .MendedBy(Cure(moment));
        }
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
