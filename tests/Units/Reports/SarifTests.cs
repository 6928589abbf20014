using System.Text.Json;
using Pipeline.Abstractions;
using Pipeline.Reports;

namespace Pipeline.Tests.Units.Reports;

public sealed class SarifTests
{
    private static readonly RulePage LeftOn = new("mask-left-on", Level.Error, "A mask that goes on comes off.", "# mask-left-on\n\nWhy.");

    private static readonly Finding Finding = new()
    {
        Rule = "mask-left-on",
        Level = Level.Error,
        Place = new Place("work flows/tide#1.yaml", 41, 9),
        Message = "The mask 'discs' is never taken off.",
        Remedy = "Add an unmask step.",
        Model = "Line diver",
        Areas = ["viewports"],
        Related = [new Related(new Place("work flows/tide#1.yaml", 60, 9), "the last coat over it")],
    };

    [Fact]
    public void A_finding_is_a_result_with_its_rule_place_and_related_place()
    {
        var run = Run([Finding]);
        run.GetProperty("tool").GetProperty("driver").GetProperty("rules")[0].GetProperty("id").GetString().Should().Be("mask-left-on");
        var result = run.GetProperty("results")[0];
        result.GetProperty("ruleId").GetString().Should().Be("mask-left-on");
        result.GetProperty("ruleIndex").GetInt32().Should().Be(0);
        result.GetProperty("level").GetString().Should().Be("error");
        result.GetProperty("message").GetProperty("text").GetString().Should().Be("The mask 'discs' is never taken off. Add an unmask step.");
        var place = result.GetProperty("locations")[0].GetProperty("physicalLocation");
        place.GetProperty("artifactLocation").GetProperty("uri").GetString().Should().Be("work%20flows/tide%231.yaml");
        place.GetProperty("region").GetProperty("startLine").GetInt32().Should().Be(41);
        place.GetProperty("region").GetProperty("startColumn").GetInt32().Should().Be(9);
        result.GetProperty("locations")[0].GetProperty("logicalLocations")[0].GetProperty("fullyQualifiedName").GetString().Should().Be("Line diver/viewports");
        result.GetProperty("relatedLocations")[0].GetProperty("message").GetProperty("text").GetString().Should().Be("the last coat over it");
    }

    [Fact]
    public void A_silenced_finding_is_suppressed_with_its_reason() =>
        Run([Finding with { Silenced = "meant so" }]).GetProperty("results")[0].GetProperty("suppressions")[0]
            .GetProperty("justification").GetString().Should().Be("meant so");

    [Fact]
    public void A_mistake_in_reading_has_no_rule() =>
        Run([Finding with { Rule = null }]).GetProperty("results")[0].TryGetProperty("ruleId", out _).Should().BeFalse();

    [Theory]
    [InlineData("/home/tide/a b.yaml", "file:///home/tide/a%20b.yaml")]
    [InlineData(@"C:\tide\a.yaml", "file:///C:/tide/a.yaml")]
    [InlineData("-", "-")]
    [InlineData("潮.yaml", "%E6%BD%AE.yaml")]
    public void A_file_name_is_a_uri(string file, string uri) =>
        Run([Finding with { Place = new Place(file, 1, 1) }]).GetProperty("results")[0].GetProperty("locations")[0]
            .GetProperty("physicalLocation").GetProperty("artifactLocation").GetProperty("uri").GetString().Should().Be(uri);

    [Fact]
    public void Words_of_the_file_make_neither_links_nor_placeholders() =>
        Run([Finding with { Message = "[x](http://harbour.example) {0}", Remedy = null }]).GetProperty("results")[0]
            .GetProperty("message").GetProperty("text").GetString().Should().Be(@"\[x\](http://harbour.example) {{0}}");

    private static JsonElement Run(Sequence<Finding> findings)
    {
        using var log = JsonDocument.Parse(FindingsSarif.Render(findings, [LeftOn], "1.2.3"));
        log.RootElement.GetProperty("version").GetString().Should().Be("2.1.0");
        return log.RootElement.GetProperty("runs")[0].Clone();
    }
}
