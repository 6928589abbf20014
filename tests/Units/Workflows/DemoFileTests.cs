using Pipeline.Engine;
using Pipeline.Surfaces;
using Pipeline.Tests.Units.House;
using Pipeline.Tests.Units.Plugins;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Workflows;

/// <summary>The demo files bind with the verbs of the house.</summary>
public class DemoFileTests
{
    [Fact]
    public void Every_rule_can_be_silenced_by_its_name_those_of_the_walk_included()
    {
        var allowed = string.Join(", ", AllPlugins.Rules.Concat(Walk.OwnRules.Select(own => own.Item)).Select(rule => $"{rule.Name}: tried on a card"));
        var file = new SourceText("crew.yaml", $"allow: {{ {allowed} }}\n" + Written.WithRoute("- clean: all"));

        Stages.Check([file], HouseTrade.OfPlugins).Findings.Should().NotContain(finding => finding.Message.Contains("There is no rule"));
    }

    [Theory]
    [InlineData("workflows/first.yaml")]
    [InlineData("workflows/tidewater.yaml")]
    [InlineData("workflows/harbour-fair.yaml")]
    [InlineData("workflows/together/lightship.yaml", "workflows/together/ferry-cats.yaml")]
    public void A_demo_file_gives_a_batch_and_no_finding(params string[] files)
    {
        var readings = files.Select(file => Reader.Read(new SourceText(file, File.ReadAllText(Path.Combine(Repository.Root, file))))).ToList();
        readings.SelectMany(reading => reading.Findings).Should().BeEmpty();

        var bound = Binder.Bind([.. readings.Select(reading => reading.Tree!)], HouseTrade.Trade);

        bound.Findings.Should().BeEmpty(string.Join('\n', bound.Findings.Select(finding => $"{finding.Place} {finding.Message} {finding.Remedy}")));
        bound.Batch!.Routes.Should().NotBeEmpty().And.OnlyContain(route => route.Steps.Count > 0);
    }
}
