using Pipeline.Abstractions;
using Pipeline.Surfaces.Deeds;
using Pipeline.Surfaces.Rules;
using Pipeline.Workflows;

namespace Pipeline.Surfaces;

/// <summary>Looks at one step closely. Pure.</summary>
public static class Look
{
    /// <summary>The step of a walked batch, and what every rule makes of it.</summary>
    /// <param name="walked">The batch.</param>
    /// <param name="trade">The rules to ask.</param>
    /// <param name="route">Position in <see cref="Walked.Routes"/>.</param>
    /// <param name="step">Index in the route.</param>
    public static StepLook At(Walked walked, Trade trade, int route, int step)
    {
        ArgumentNullException.ThrowIfNull(walked);
        ArgumentNullException.ThrowIfNull(trade);
        var seen = walked.Routes[route];
        var moment = seen.Moments[step];
        var runner = new RuleRunner(trade.Rules);
        var said = runner.Judge(new WalkedSteps(seen.Route.Model, seen.Moments)).Where(each => each.Verdict.Step == step).ToList();
        var ofBatch = runner.JudgeBatch(Walk.View(walked.Batch, walked.Routes)).Where(each => each.Verdict.Step == new StepInBatch(route, step)).ToList();
        var silencing = new Silencing(walked.Batch);
        var rules = new List<RuleLook>();
        foreach (var rule in trade.Rules.Concat(Walk.OwnRules).Where(rule => rule.Item is not PlanRule).OrderBy(rule => rule.Item.Name, StringComparer.Ordinal))
        {
            var name = rule.Item.Name;
            var look = new RuleLook(
                rule,
                said.Where(each => each.Rule == name).Select(each => each.Verdict).ToSequence(),
                ofBatch.Where(each => each.Rule == name).Select(each => each.Verdict).ToSequence(),
                silencing.For(name, step, seen.Route),
                []);
            rules.Add(look.IsSilent ? look with { WouldSpeakIf = Otherwise.WouldSpeak(rule.Item, moment) } : look);
        }

        return new StepLook(seen.Route, moment, Touched(moment), rules.ToSequence(), walked.Batch.Bench.Climate);
    }

    private static Sequence<string> Touched(Moment moment)
    {
        var touched = new List<string>(moment.Step.Areas);
        foreach (var area in moment.Model.Areas)
        {
            if (!touched.Contains(area.Name) && (moment.Overspray.Contains(area.Name) || !moment.Before[area.Name].Equals(moment.After[area.Name])))
                touched.Add(area.Name);
        }

        return touched.ToSequence();
    }
}

/// <summary>Why a rule is silent: the step is shown to it again with one thing changed at a time.</summary>
internal static class Otherwise
{
    private sealed record Change(string Words, Func<Surface, Surface> Make);

    /// <summary>The changes that would make a rule speak about a step, in words that follow "if".</summary>
    public static Sequence<string> WouldSpeak(Rule rule, Moment moment)
    {
        var words = new List<string>();
        foreach (var change in Changes(moment))
        {
            var before = moment.Before.With(moment.Step.Areas, change.Make);
            if (before.Equals(moment.Before) || words.Contains(change.Words))
                continue;
            var overspray = Laying.Overspray(before, moment.Step, moment.Model, moment.Pieces);
            var changed = moment with { Before = before, Overspray = overspray, After = StepOnSurfaces.After(before, moment.Step, moment.Model, overspray) };
            if (Speaks(rule, changed))
                words.Add(change.Words);
        }

        return words.ToSequence();
    }

    private static IEnumerable<Change> Changes(Moment moment)
    {
        yield return new Change("nothing had been done to the bare piece", surface => surface with { Preparations = [] });
        yield return new Change("the piece were bare", surface => surface with { Layers = [] });
        foreach (var name in moment.Step.Areas.Select(area => moment.Before[area].Top?.Name).OfType<string>().Distinct().Take(3))
        {
            yield return new Change($"no {name} lay on top", surface =>
                surface.Top?.Name == name ? surface with { Layers = surface.Layers.Without(layer => ReferenceEquals(layer, surface.Top)) } : surface);
        }

        yield return new Change("the top were matt", surface => surface.Top is { } top
            ? surface with { Layers = surface.Layers.Select(layer => ReferenceEquals(layer, top) ? layer with { Sheen = Sheen.Matt } : layer).ToSequence() }
            : surface);
    }

    // a rule that fails on what never was says nothing about what is
    private static bool Speaks(Rule rule, Moment moment)
    {
        try
        {
            return rule.LooksAt(moment.Step) && rule.Judge(moment).Any(verdict => verdict.Step == moment.Step.Index);
        }
        catch (Exception mistake) when (mistake is not OutOfMemoryException)
        {
            return false;
        }
    }
}
