using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>Work on a joint whose glue has not set.</summary>
public sealed class JointNotSet : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A glued joint has set before anybody works on it.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        var prepares = moment.Step.First<Deed.Prepare>();
        if (moment.Step.Coat() is null && prepares is not { What: not Preparation.Glued } && moment.Step.First<Deed.Handle>() is null)
            yield break;
        foreach (var area in moment.Step.Areas)
        {
            foreach (var done in moment.Before[area].Preparations)
            {
                if (done is not { What: Preparation.Glued or Preparation.Joined, Settles: { } sets } || IsJudgedBefore(moment, area, done))
                    continue;
                var sandable = prepares is { What: Preparation.Sanded } ? Sandable(moment.At(done.Step)) : null;
                yield return new Verdict.Needs
                {
                    Step = moment.Step.Index,
                    Since = done.Step,
                    Span = new Span.AtLeast(sandable ?? sets),
                    Carrier = done.Carrier,
                    For = sandable is null ? "glue set" : "seam hard enough to sand",
                    Areas = [area],
                    Message = sandable is null ? "The joint shifts or opens if it is worked on before the glue has set." : "A seam sanded too soon sinks and shows as a ghost line.",
                    Remedy = "Leave the joint alone until it has set.",
                };
            }
        }
    }

    private static DryingRange? Sandable(Step step) => step.First<Deed.Prepare>()?.Sandable;

    // a coat laid since then has waited already, and sanding asks for more than a coat does
    private static bool IsJudgedBefore(Moment moment, string area, PreparationDone done) =>
        moment.Step.First<Deed.Prepare>() is null && moment.Before[area].Top is { } top && top.Step > done.Step;
}
