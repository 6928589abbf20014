using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Surfaces.Rules;

/// <summary>Rules that the painter silenced, at a step, a model or the batch, and whether each did silence anything.</summary>
internal sealed class Silencing(Batch batch)
{
    private readonly HashSet<Silence> used = [];

    /// <summary>The silence that covers a rule at a step; the one nearest to the step. Null if the rule may speak.</summary>
    public Silence? For(string rule, int step, Route route)
    {
        var silence = Find(route.Steps[step].Silences, rule) ?? Find(route.Silences, rule) ?? Find(batch.Silences, rule);
        if (silence is not null)
            used.Add(silence);
        return silence;
    }

    /// <summary>The silence that covers what a rule says about the batch as a whole, or null.</summary>
    public Silence? ForBatch(string rule)
    {
        var silence = Find(batch.Silences, rule);
        if (silence is not null)
            used.Add(silence);
        return silence;
    }

    /// <summary>
    /// A note for each silence that silenced nothing. A step of a scheme followed several times is one silence. What a rule of plans will
    /// have to say is not known before there is one.
    /// </summary>
    public IEnumerable<Finding> WithoutEffect(Trade trade)
    {
        var rule = new SilenceWithoutEffect();
        var ofPlans = trade.Rules.Select(brought => brought.Item).OfType<PlanRule>().Select(each => each.Name).ToHashSet(StringComparer.Ordinal);
        var usedPlaces = used.Select(silence => (silence.Rule, silence.Place)).ToHashSet();
        var seen = new HashSet<(string, Place)>();
        foreach (var silence in All())
        {
            if (ofPlans.Contains(silence.Rule) || usedPlaces.Contains((silence.Rule, silence.Place)) || !seen.Add((silence.Rule, silence.Place)))
                continue;
            yield return rule.About(silence, trade);
        }
    }

    private static Silence? Find(Sequence<Silence> silences, string rule)
    {
        foreach (var silence in silences)
        {
            if (silence.Rule == rule)
                return silence;
        }

        return null;
    }

    private IEnumerable<Silence> All()
    {
        foreach (var silence in batch.Silences)
            yield return silence;
        foreach (var route in batch.Routes)
        {
            foreach (var silence in route.Silences)
                yield return silence;
            foreach (var step in route.Steps)
            {
                foreach (var silence in step.Silences)
                    yield return silence;
            }
        }
    }
}
