using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Engine;
using Pipeline.Planning;
using Pipeline.Tests.Units.House;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Planning;

/// <summary>The demo files with the plugins of the house, from text to plan.</summary>
public class DemoTests
{
    private static readonly Instant From = Instant.FromUtc(2026, 11, 30, 18, 0);

    public static TheoryData<string[]> Demos => new()
    {
        new[] { "workflows/first.yaml" },
        new[] { "workflows/tidewater.yaml" },
        new[] { "workflows/harbour-fair.yaml" },
        Directory.GetFiles(Path.Combine(Repository.Root, "workflows/together"), "*.yaml").Order(StringComparer.Ordinal).ToArray(),
    };

    [Theory]
    [MemberData(nameof(Demos))]
    public void A_demo_is_planned_in_time_and_has_nothing_to_complain_about(string[] files)
    {
        var plan = Plan(files, pace: null);
        plan.Findings.Where(finding => finding is { Level: not Level.Note, Silenced: null }).Select(finding => finding.Message).Should().BeEmpty();
        plan.Finishes.Where(finish => finish.Due is { } due && finish.Ready.ToInstant() > due.ToInstant()).Should().BeEmpty();
        plan.Finishes.Sum(finish => finish.Units).Should().BePositive();
    }

    [Fact]
    public void At_a_brisk_pace_it_risks_something_but_ruins_nothing()
    {
        var plan = Plan(["workflows/tidewater.yaml"], Pace.Brisk);
        plan.Findings.Should().Contain(finding => finding.Level == Level.Warning);
        plan.Findings.Should().NotContain(finding => finding.Level == Level.Error);
        plan.Pace.Should().Be(Pace.Brisk);
    }

    internal static Plan Plan(string[] files, Pace? pace)
    {
        var texts = files.Select(file => new SourceText(file, File.ReadAllText(Path.Combine(Repository.Root, file)))).ToSequence();
        var walked = Stages.Check(texts, Check.Trade).Walked!;
        return Planner.Plan(walked, Check.Trade, new PlanRequest(From, SearchEffort.Quick, pace)).Should().BeOfType<PlanOutcome.Planned>().Which.Plan;
    }
}
