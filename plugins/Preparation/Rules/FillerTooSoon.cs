using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>Filler sanded or painted over before it has cured.</summary>
public sealed class FillerTooSoon : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Filler has cured before it is sanded or painted.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        var isSanding = moment.Step.First<Deed.Prepare>() is { What: Preparation.Sanded or Preparation.Trimmed or Preparation.Drilled };
        if (moment.Step.Coat() is null && !isSanding)
            yield break;
        foreach (var area in moment.Step.Areas)
        {
            var surface = moment.Before[area];
            foreach (var done in surface.Preparations)
            {
                if (done is not { What: Preparation.Filled, Settles: { } cures } || done.Step < (surface.Top?.Step ?? -1))
                    continue;
                yield return new Verdict.Needs
                {
                    Step = moment.Step.Index,
                    Since = done.Step,
                    Span = new Span.AtLeast(cures),
                    Carrier = done.Carrier,
                    For = "filler cured",
                    Areas = [area],
                    Message = "Filler worked or painted over too soon shrinks back, and the repair shows.",
                    Remedy = "Let it cure through; overnight is the usual time.",
                };
            }
        }
    }
}
