using Pipeline.Abstractions;
using Pipeline.Planning;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Engine;

/// <summary>
/// The straight line: read, bind, walk and judge, then plan. The only place that lists the stages in order. Pure.
/// </summary>
public static class Stages
{
    /// <summary>From texts to a walked batch with all findings.</summary>
    /// <param name="texts">At least one.</param>
    /// <param name="trade">What the plugins brought.</param>
    public static Checked Check(Sequence<SourceText> texts, Trade trade)
    {
        var readings = texts.Select(Reader.Read).ToList();
        var read = readings.SelectMany(reading => reading.Findings);
        var trees = readings.Select(reading => reading.Tree).OfType<SyntaxTree>().ToList();
        if (trees.Count < readings.Count)
            return new Checked(texts, null, read.ToSequence());

        // the walk's own rules can be silenced by name like any other
        var binding = Binder.Bind(trees, Nameable(trade));
        var bound = read.Concat(binding.Findings);
        if (binding.Batch is not { } batch)
            return new Checked(texts, null, bound.ToSequence());

        var walked = Walk.Run(batch, trade);
        var never = NoRoom.Of(walked).Concat(UnkeepableWaits.Of(walked)).ToSequence();
        return new Checked(texts, walked, bound.Concat(TimeJudge.BeforePlan(walked, trade)).Concat(never).ToSequence())
        {
            Unplannable = never,
            RulesOfPlans = trade.Rules.Select(rule => rule.Item).OfType<PlanRule>().Select(rule => rule.Name).ToSequence(),
        };
    }

    /// <summary>Findings with the changes to the texts that mend them, where they carry a mend and the text can be changed faithfully.</summary>
    /// <param name="texts">The texts the findings are about.</param>
    /// <param name="findings">What was found.</param>
    public static Sequence<Finding> WithEdits(Sequence<SourceText> texts, Sequence<Finding> findings)
    {
        foreach (var text in texts)
        {
            if (findings.Any(finding => finding is { Mend: not null, Silenced: null } && finding.Place.File == text.Name))
                findings = new Mending(text).WithEdits(findings);
        }

        return findings;
    }

    /// <summary>All that a file can name: what the plugins brought and the rules of the walk itself, sorted by name.</summary>
    public static Trade Nameable(Trade trade)
    {
        ArgumentNullException.ThrowIfNull(trade);
        return trade with { Rules = trade.Rules.Concat(Walk.OwnRules).OrderBy(rule => rule.Item.Name, StringComparer.Ordinal).ToSequence() };
    }

    /// <summary>From a checked batch without errors to a plan, or to the reasons why there is none.</summary>
    /// <param name="walked">The batch.</param>
    /// <param name="trade">What the plugins brought.</param>
    /// <param name="request">From when, how hard to try.</param>
    /// <param name="cancel">Stops the search with the best plan so far.</param>
    public static PlanOutcome Plan(Walked walked, Trade trade, PlanRequest request, CancellationToken cancel) =>
        Planner.Plan(walked, trade, request, cancel);
}

/// <summary>What checking gave.</summary>
/// <param name="Texts">What was checked.</param>
/// <param name="Walked">The walked batch; null if the files cannot be understood.</param>
/// <param name="Findings">Everything there is to say.</param>
public sealed record Checked(Sequence<SourceText> Texts, Walked? Walked, Sequence<Finding> Findings)
{
    /// <summary>
    /// The batch, if a plan may be laid on it: it was understood and no rule sees an error. A plugin that failed does not stand
    /// in the way, nor what rules of plans say of decided starts, nor what no plan can do: planning shows that, and what could be done.
    /// </summary>
    public Walked? Sound => Findings.Without(Unplannable.Contains).Any(finding => finding is { Level: Level.Error, Rule: { } rule, Silenced: null } && !RulesOfPlans.Contains(rule)) ? null : Walked;

    /// <summary>Those of the findings that say what no plan has room for or can keep; a plan, or why there is none, says more.</summary>
    public Sequence<Finding> Unplannable { get; init; }

    /// <summary>Names of the rules that judge plans.</summary>
    public Sequence<string> RulesOfPlans { get; init; }

    /// <summary>True if something of level error speaks.</summary>
    public bool HasErrors => Findings.Any(finding => finding is { Level: Level.Error, Silenced: null });
}
