using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Engine;
using Pipeline.Planning;
using Pipeline.Surfaces;
using Pipeline.Tests.Units.Plugins;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units;

/// <summary>Checks a workflow the way the command does: read, bind, walk, and judge the times of pinned steps, with all plugins.</summary>
internal static class Check
{
    /// <summary>All that the plugins in the house bring.</summary>
    public static Trade Trade { get; } = TradeJoining.TradeOf(AllPlugins.Assemblies);

    /// <summary>All rules in use, those of the walk itself included.</summary>
    public static IReadOnlyList<Rule> Rules { get; } =
        [.. Trade.Rules.Concat(Walk.OwnRules).Select(brought => brought.Item).OrderBy(rule => rule.Name, StringComparer.Ordinal)];

    /// <summary>What a careful painter says about a workflow; fails if it cannot be read.</summary>
    public static IReadOnlyList<Finding> File(string yaml)
    {
        var walked = Walked(yaml);
        return [.. TimeJudge.BeforePlan(walked, Trade).Concat(NoRoom.Of(walked)).Concat(UnkeepableWaits.Of(walked)).OrderBy(finding => finding.Place)];
    }

    /// <summary>What is said about a workflow and, where it may be planned, about its plan from a Monday evening on; the same thing once.</summary>
    public static IReadOnlyList<Finding> Planned(string yaml)
    {
        var findings = File(yaml);
        if (findings.Any(finding => finding is { Level: Level.Error, Silenced: null }))
            return findings;
        var outcome = Planner.Plan(Walked(yaml), Trade, new PlanRequest(Instant.FromUtc(2026, 11, 30, 18, 0), SearchEffort.Quick));
        var more = outcome is PlanOutcome.Planned planned ? planned.Plan.Findings : ((PlanOutcome.NoPlan)outcome).Reasons;
        return [.. findings.Concat(more).DistinctBy(finding => (finding.Rule, finding.Place)).OrderBy(finding => finding.Place)];
    }

    /// <summary>What a careful painter says about one model: its <c>material</c>, <c>areas</c> and <c>route</c>, on the standard bench.</summary>
    public static IReadOnlyList<Finding> Model(string model) => File(Prelude.Around(model));

    /// <summary>The walk of a workflow; fails if it cannot be read.</summary>
    public static Walked Walked(string yaml)
    {
        var reading = Reader.Read(new SourceText("case.yaml", yaml));
        Told(reading.Findings).Should().BeEmpty("it should be readable");
        var binding = Binder.Bind([reading.Tree!], Trade);
        Told(binding.Findings.Where(finding => finding.Level == Level.Error)).Should().BeEmpty("it should be bindable");
        return Walk.Run(binding.Batch!, Trade);
    }

    /// <summary>Findings as lines of text.</summary>
    public static string Told(IEnumerable<Finding> findings) => string.Join('\n', findings.Select(finding =>
        $"{finding.Place}: {finding.Level}: {finding.Message} {finding.Remedy} [{finding.Rule}]"));
}
