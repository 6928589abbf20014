using Pipeline.Abstractions;

namespace Pipeline.Plugins.Masking.Rules;

/// <summary>Paint goes over a liquid mask that is still wet.</summary>
public sealed class MaskNotSet : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A liquid mask has dried clear before anything is painted over or beside it.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.Coat() is not null;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        List<Verdict>? verdicts = null;
        foreach (var area in moment.Model.Areas)
        {
            foreach (var mask in moment.Before[area.Name].Masks)
            {
                if (mask.Material.Sets is { } sets && Meets(moment, area))
                    (verdicts ??= []).Add(Waits(moment, mask, sets, area.Name));
            }
        }

        return verdicts ?? Enumerable.Empty<Verdict>();
    }

    private static Verdict.Needs Waits(Moment moment, MaskOn mask, DryingRange sets, string area) => new()
    {
        Step = moment.Step.Index,
        Since = mask.Step,
        Span = new Span.AtLeast(sets),
        Carrier = Carrier.Water,
        IsFromLabel = mask.Material.IsFromFile,
        For = "mask set",
        Areas = [area],
        Message = $"The {mask.Material.Name} '{mask.Name}' has to dry clear first, or paint and mask mix.",
        Remedy = "Wait until it is clear all over.",
    };

    // a coat on nothing but what is masked is another rule's
    private static bool Meets(Moment moment, Area area) =>
        (moment.Step.Coat()!.IsSprayed() ? moment.Pieces.IsBeside(area.Name, moment.Step.Areas, moment.Step.Index) : moment.Step.Areas.Contains(area.Name)) && !moment.Reached().IsEmpty;
}
