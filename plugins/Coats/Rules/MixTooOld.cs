using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>One pot of a mix is used beyond its pot life.</summary>
public sealed class MixTooOld : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A mix made once is used up within its pot life.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> JudgeRoute(WalkedSteps route)
    {
        var first = new Dictionary<string, Moment>(StringComparer.Ordinal);
        foreach (var moment in route.Moments)
        {
            // a mix that is made as it is needed is fresh each time
            if (moment.Step.Coat()?.Paint is not { Recipe.Makes: not null, PotLife: { } life } mix)
                continue;
            if (first.TryAdd(mix.Name, moment))
                continue;
            yield return new Verdict.Needs
            {
                Step = moment.Step.Index,
                Since = first[mix.Name].Step.Index,
                SinceStart = true,
                // the last of several coats needs it too
                ToFinish = moment.Step.Work.Passes > 1,
                Span = new Span.AtMost(life, life),
                For = $"{mix.Name} used up",
                Areas = moment.Step.Areas,
                Message = $"{mix.Name} keeps for {life} once it is mixed; beyond that it has lumps and does not bond.",
                Remedy = "Mix it anew for this step, or bring the two steps closer together.",
                Related = [new Pointer(first[mix.Name].Step.Index, $"{mix.Name} is first used here")],
            };
        }
    }
}
