using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>Paint on a piece that is still wet from the bath.</summary>
public sealed class DampPiece : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A washed, wet-sanded or stripped piece is dry before it is painted or cured.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        var isCuring = moment.Step.First<Deed.Prepare>() is { What: Preparation.PostCured };
        if (moment.Step.Coat() is null && !isCuring)
            yield break;
        foreach (var area in moment.Step.Areas)
        {
            var surface = moment.Before[area];
            if (surface.IsMasked || surface.IsHidden)
                continue;
            foreach (var done in surface.Preparations)
            {
                if (done is not { What: Preparation.Washed or Preparation.Sanded or Preparation.Stripped, Settles: { } dries } || done.Step < (surface.Top?.Step ?? -1))
                    continue;
                yield return new Verdict.Needs
                {
                    Step = moment.Step.Index,
                    Since = done.Step,
                    Span = new Span.AtLeast(dries),
                    Carrier = done.Carrier,
                    For = "dry",
                    Areas = [area],
                    Message = "The piece is still damp, and what is in its folds ends up under the paint.",
                    Remedy = "Leave it to dry, or help with gentle air.",
                };
            }
        }
    }
}
