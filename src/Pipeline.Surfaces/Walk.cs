using Pipeline.Abstractions;
using Pipeline.Surfaces.Lifecycle;
using Pipeline.Surfaces.Order;
using Pipeline.Surfaces.Rules;
using Pipeline.Workflows;

namespace Pipeline.Surfaces;

/// <summary>A symbolic run of every route: surfaces, order, waits, findings. Pure.</summary>
public static class Walk
{
    /// <summary>The rules of the walk itself, to be listed and explained beside those of the plugins.</summary>
    public static Sequence<Brought<Rule>> OwnRules { get; } =
        [new("the walk", new SilenceWithoutEffect()), new("the walk", new StepOutOfTurn())];

    /// <summary>Walks all routes of a batch and asks all rules about every step.</summary>
    /// <param name="batch">What to walk.</param>
    /// <param name="trade">The rules to ask. A rule that fails becomes one finding that names it; the others go on.</param>
    public static Walked Run(Batch batch, Trade trade)
    {
        var lifecycle = new ModelLifecycle();
        var runner = new RuleRunner(trade.Rules);
        var silencing = new Silencing(batch);
        var report = new FindingReport();
        var routes = new List<WalkedRoute>();
        foreach (var route in batch.Routes)
        {
            var moments = RouteWalk.Moments(route, batch, lifecycle);
            var waits = new List<RuledWait>();
            foreach (var (rule, verdict) in runner.Judge(new WalkedSteps(route.Model, moments.ToSequence())))
            {
                var silence = silencing.For(rule, verdict.Step, route);
                if (verdict is Verdict.Says says)
                    report.Add(rule, says, route, silence);
                else if (verdict is Verdict.Needs needs && silence is null)
                    waits.Add(new RuledWait(rule, needs));
            }

            routes.Add(new WalkedRoute(
                route,
                moments.ToSequence(),
                TouchOrder.Of(moments),
                waits.ToSequence(),
                RouteWalk.Masks(moments)));
        }

        JudgeBatch(batch, routes, runner, silencing, report);
        report.AddAll(runner.Failures);
        report.AddAll(silencing.WithoutEffect(trade));
        return new Walked(batch, routes.ToSequence(), report.Sorted());
    }

    /// <summary>What the rules of plans say about a plan for a walked batch, or about as much of one as is known.</summary>
    /// <param name="walked">The batch.</param>
    /// <param name="trade">The rules to ask.</param>
    /// <param name="see">Shows the plan to them, given the batch as they see it.</param>
    public static Sequence<Finding> JudgePlan(Walked walked, Trade trade, Func<BatchView, PlanView> see)
    {
        ArgumentNullException.ThrowIfNull(walked);
        ArgumentNullException.ThrowIfNull(trade);
        ArgumentNullException.ThrowIfNull(see);
        var ofPlans = trade.Rules.Where(rule => rule.Item is PlanRule).ToSequence();
        if (ofPlans.IsEmpty)
            return [];
        var runner = new RuleRunner(ofPlans);
        var report = new FindingReport();
        Add(runner.JudgePlan(see(View(walked.Batch, walked.Routes))), walked.Routes, new Silencing(walked.Batch), report);
        report.AddAll(runner.Failures);
        return report.Sorted();
    }

    private static void JudgeBatch(Batch batch, List<WalkedRoute> routes, RuleRunner runner, Silencing silencing, FindingReport report) =>
        Add(runner.JudgeBatch(View(batch, routes)), routes, silencing, report);

    private static void Add(List<(string Rule, BatchVerdict Verdict)> said, IReadOnlyList<WalkedRoute> routes, Silencing silencing, FindingReport report)
    {
        foreach (var (rule, verdict) in said)
        {
            var route = verdict.Step is { } at ? routes[at.Route].Route : null;
            var silence = route is null ? silencing.ForBatch(rule) : silencing.For(rule, verdict.Step!.Value.Step, route);
            report.Add(rule, verdict, route?.Model.Name, silence);
        }
    }

    /// <summary>A walked batch as rules see it.</summary>
    internal static BatchView View(Batch batch, IReadOnlyList<WalkedRoute> routes) => new()
    {
        Routes = routes.Select(route => new WalkedSteps(route.Route.Model, route.Moments)).ToSequence(),
        Starts = routes.SelectMany((route, index) => route.Route.Pins.Select(pin =>
            new DecidedStart(new StepInBatch(index, pin.Step), pin.At.ToDateTimeUnspecified()))).ToSequence(),
        Paints = batch.Paints,
        Tables = batch.Tables,
        Climate = batch.Bench.Climate,
        Bench = batch.Bench.Place,
        Painters = batch.Bench.Painters.Count,
        Tools = batch.Bench.Tools.Select(tool => new ToolCount(tool.Name, tool.Count)).ToSequence(),
        Cup = batch.Bench.Cup,
    };
}
