using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Surfaces.Rules;

/// <summary>A verdict and the name of the rule that gave it.</summary>
internal readonly record struct RuledVerdict(string Rule, Verdict Verdict);

/// <summary>
/// Asks every rule about every step and every route. A rule that throws, or answers about steps or areas that are not there, is asked
/// no more; one finding names it and its plugin.
/// </summary>
internal sealed class RuleRunner
{
    // a rule that has more to say than this about one step or route does not come to an end
    private const int MostVerdicts = 100_000;

    private readonly Brought<Rule>[] rules;
    private readonly bool[] hasFailed;
    private readonly List<Finding> failures = [];
    private readonly StepOutOfTurn outOfTurn = new();

    public RuleRunner(Sequence<Brought<Rule>> rules)
    {
        this.rules = [.. rules];
        hasFailed = new bool[rules.Count];
    }

    /// <summary>One finding for each rule that failed.</summary>
    public IReadOnlyList<Finding> Failures => failures;

    /// <summary>What the rules say about a route, equal verdicts put together, areas filled in.</summary>
    public List<RuledVerdict> Judge(WalkedSteps route)
    {
        var verdicts = new List<RuledVerdict>();
        for (var i = 0; i < rules.Length; i++)
        {
            if (rules[i].Item is PlanRule)
                continue;
            AskAboutSteps(i, route, verdicts);
            AskAboutRoute(i, route, verdicts);
        }

        AddRefusals(route, verdicts);
        for (var i = 0; i < verdicts.Count; i++)
            verdicts[i] = verdicts[i] with { Verdict = Wording.FillIn(verdicts[i].Verdict) };
        return verdicts;
    }

    /// <summary>What the rules say about the batch as a whole, areas filled in.</summary>
    public List<(string Rule, BatchVerdict Verdict)> JudgeBatch(BatchView batch) => AskAll(rule => rule.JudgeBatch(batch), batch);

    /// <summary>What the rules of plans say about one, areas filled in.</summary>
    public List<(string Rule, BatchVerdict Verdict)> JudgePlan(PlanView plan) =>
        AskAll(rule => rule is PlanRule ofPlans ? ofPlans.JudgePlan(plan) : [], plan.Batch);

    private List<(string Rule, BatchVerdict Verdict)> AskAll(Func<Rule, IEnumerable<BatchVerdict>> ask, BatchView batch)
    {
        var verdicts = new List<(string Rule, BatchVerdict Verdict)>();
        for (var i = 0; i < rules.Length; i++)
        {
            if (hasFailed[i])
                continue;
            var (plugin, rule) = rules[i];
            var first = verdicts.Count;
            try
            {
                foreach (var verdict in ask(rule))
                {
                    Check(verdict, batch);
                    if (verdicts.Count - first >= MostVerdicts)
                        throw new InvalidOperationException("It has too much to say about one batch.");
                    verdicts.Add((rule.Name, Wording.FillIn(verdict)));
                }
            }
            catch (Exception mistake) when (mistake is not OutOfMemoryException)
            {
                verdicts.RemoveRange(first, verdicts.Count - first);
                hasFailed[i] = true;
                failures.Add(Failure(plugin, NameOf(rule), mistake, batch.Bench));
            }
        }

        return verdicts;
    }

    private static void Check(BatchVerdict? verdict, BatchView batch)
    {
        if (verdict is null)
            throw new InvalidOperationException("It gave an empty verdict.");
        if (verdict.Step is not { } at)
            return;
        if (at.Route < 0 || at.Route >= batch.Routes.Count || at.Step < 0 || at.Step >= batch.Routes[at.Route].Moments.Count)
            throw new InvalidOperationException($"It spoke of step {at.Step} of route {at.Route}, which is not there.");
    }

    private void AskAboutSteps(int index, WalkedSteps route, List<RuledVerdict> verdicts)
    {
        if (hasFailed[index])
            return;
        var (_, rule) = rules[index];
        var first = verdicts.Count;
        var place = route.Model.Place;
        try
        {
            foreach (var moment in route.Moments)
            {
                place = moment.Step.Place;
                if (!rule.LooksAt(moment.Step))
                    continue;
                first = verdicts.Count;
                var said = rule.Judge(moment);
                // most have nothing to say about most steps
                if (!ReferenceEquals(said, Array.Empty<Verdict>()))
                    Take(said, first, rule, route, verdicts);
            }
        }
        catch (Exception mistake) when (mistake is not OutOfMemoryException)
        {
            LeaveOut(index, first, mistake, place, verdicts);
        }
    }

    private void AskAboutRoute(int index, WalkedSteps route, List<RuledVerdict> verdicts)
    {
        if (hasFailed[index])
            return;
        var (_, rule) = rules[index];
        var first = verdicts.Count;
        try
        {
            var said = rule.JudgeRoute(route);
            // what is said about a whole route comes in any order; by step, what differs only in areas stands together
            if (!ReferenceEquals(said, Array.Empty<Verdict>()))
                Take(said.OrderBy(verdict => verdict?.Step ?? -1), first, rule, route, verdicts);
        }
        catch (Exception mistake) when (mistake is not OutOfMemoryException)
        {
            LeaveOut(index, first, mistake, route.Model.Place, verdicts);
        }
    }

    private static void Take(IEnumerable<Verdict> said, int first, Rule rule, WalkedSteps route, List<RuledVerdict> verdicts)
    {
        foreach (var verdict in said)
        {
            Check(verdict, route);
            if (verdicts.Count - first >= MostVerdicts)
                throw new InvalidOperationException("It has too much to say about one step.");
            PutTogether(verdicts, first, rule.Name, verdict);
        }
    }

    private void LeaveOut(int index, int first, Exception mistake, Place place, List<RuledVerdict> verdicts)
    {
        var (plugin, rule) = rules[index];
        verdicts.RemoveRange(first, verdicts.Count - first);
        hasFailed[index] = true;
        failures.Add(Failure(plugin, NameOf(rule), mistake, place));
    }

    private static string NameOf(Rule rule)
    {
        try
        {
            return rule.Name;
        }
        catch (Exception mistake) when (mistake is not OutOfMemoryException)
        {
            return rule.GetType().Name;
        }
    }

    private static Finding Failure(string plugin, string rule, Exception mistake, Place place) => new()
    {
        Level = Level.Error,
        Place = place,
        Message = $"The rule '{rule}' of the plugin '{plugin}' failed here and was left out of this check: {Wording.OneLine(mistake.Message)} "
            + $"({mistake.GetType().Name})",
        Remedy = $"Bring the plugin '{plugin}' up to date, or take it out.",
    };

    private static void Check(Verdict? verdict, WalkedSteps route)
    {
        if (verdict is null)
            throw new InvalidOperationException("It gave an empty verdict.");
        if (verdict.Step < 0 || verdict.Step >= route.Moments.Count)
            throw new InvalidOperationException($"It spoke of step {verdict.Step} of a route with {route.Moments.Count} steps.");
        if (verdict is Verdict.Needs needs && (needs.Since < 0 || needs.Since >= needs.Step))
            throw new InvalidOperationException($"It asked to wait from step {needs.Since} to step {needs.Step}.");
        foreach (var pointer in verdict.Related)
        {
            if (pointer.Step < 0 || pointer.Step >= route.Moments.Count)
                throw new InvalidOperationException($"It pointed to step {pointer.Step} of a route with {route.Moments.Count} steps.");
        }
    }

    // Verdicts of one answer about one step that differ only in their areas are one.
    private static void PutTogether(List<RuledVerdict> verdicts, int first, string rule, Verdict verdict)
    {
        for (var i = verdicts.Count - 1; i >= first && verdicts[i].Verdict.Step == verdict.Step; i--)
        {
            if (!Wording.DifferOnlyInAreas(verdicts[i].Verdict, verdict))
                continue;
            verdicts[i] = verdicts[i] with { Verdict = Wording.Together(verdicts[i].Verdict, verdict) };
            return;
        }

        verdicts.Add(new RuledVerdict(rule, verdict));
    }

    // The walk speaks about a refused step only where no rule does: the rule knows better why.
    private void AddRefusals(WalkedSteps route, List<RuledVerdict> verdicts)
    {
        HashSet<int>? spokenOf = null;
        foreach (var moment in route.Moments)
        {
            if (moment.Passage.Refusal is null)
                continue;
            spokenOf ??= [.. verdicts.Where(said => said.Verdict is Verdict.Says).Select(said => said.Verdict.Step)];
            if (spokenOf.Contains(moment.Step.Index))
                continue;
            foreach (var verdict in outOfTurn.Judge(moment))
                verdicts.Add(new RuledVerdict(outOfTurn.Name, verdict));
        }
    }
}
