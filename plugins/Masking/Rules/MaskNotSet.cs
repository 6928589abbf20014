using Pipeline.Abstractions;

namespace Pipeline.Plugins.Masking.Rules;

/// <summary>Paint goes over a liquid mask that is still wet.</summary>
public sealed class MaskNotSet : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A liquid mask has dried clear before anything is painted over or beside it.";

    /// <inheritdoc/>
    public override StepKind? OnlyKind => StepKind.Coat;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        if (moment.Step.Kind != StepKind.Coat || moment.Step.Coat() is not { } coat)
            yield break;
        foreach (var area in moment.Model.Areas)
        {
            foreach (var mask in moment.Before[area.Name].Masks)
            {
                if (mask.Material.Sets is not { } sets || !(coat.IsSprayed() ? IsSamePart(moment, area) : moment.Step.Areas.Contains(area.Name)))
                    continue;
                yield return new Verdict.Needs
                {
                    Step = moment.Step.Index,
                    Since = mask.Step,
                    Span = new Span.AtLeast(sets),
                    Carrier = Carrier.Water,
                    For = "mask set",
                    Areas = [area.Name],
                    Message = $"The {mask.Material.Name} '{mask.Name}' has to dry clear first, or paint and mask mix.",
                    Remedy = "Wait until it is clear all over.",
                };
            }
        }
    }

    private static bool IsSamePart(Moment moment, Area area)
    {
        foreach (var named in moment.Step.Areas)
        {
            if (moment.Model.PartOf(named) == area.Part)
                return true;
        }

        return false;
    }
}
