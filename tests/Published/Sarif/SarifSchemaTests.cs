using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using Pipeline.Abstractions;
using Pipeline.Reports;

namespace Pipeline.Tests.Published.Sarif;

/// <summary>
/// Our logs against the schema of SARIF 2.1.0 (OASIS). Origin and licence of the copy: ORIGIN.md beside it.
/// </summary>
public sealed class SarifSchemaTests
{
    private static readonly JsonSchema Schema = Read();

    private static readonly Finding Finding = new()
    {
        Rule = "mask-left-on",
        Level = Level.Error,
        Place = new Place("workflows/tide water.yaml", 41, 9),
        Message = "The mask 'discs' is never taken off.",
        Remedy = "Add an unmask step.",
        Model = "Line diver",
        Areas = ["viewports", "helmet"],
        Related = [new Related(new Place("/bench/tide.yaml", 60, 9), "the last coat over it")],
    };

    [Fact]
    public void A_log_with_everything_is_valid() => Complaints(FindingsSarif.Render(
        [
            Finding,
            Finding with { Silenced = "meant so" },
            Finding with { Edits = [new Edit(new Place("workflows/tide water.yaml", 61, 1), new Place("workflows/tide water.yaml", 61, 1), "      - unmask: discs\n")] },
            Finding with { Rule = null, Level = Level.Warning, Model = null, Areas = [], Related = [] },
            Finding with { Rule = "not-listed", Level = Level.Note, Remedy = null, Areas = [], Message = "[a](b) {0} \u202e\u0007" },
        ],
        [new RulePage("mask-left-on", Level.Error, "A mask that goes on comes off.", "# mask-left-on")],
        "0.1.0")).Should().BeEmpty();

    [Fact]
    public void A_log_without_findings_is_valid() => Complaints(FindingsSarif.Render([], [], "0.1.0")).Should().BeEmpty();

    [Fact]
    public void The_schema_bites()
    {
        var log = FindingsSarif.Render([Finding], [], "0.1.0");
        Complaints(log.Replace("\"level\": \"error\"", "\"level\": \"dreadful\"", StringComparison.Ordinal)).Should().NotBeEmpty();
        Complaints(log.Replace("\"startLine\": 41", "\"startLine\": 0", StringComparison.Ordinal)).Should().NotBeEmpty();
        Complaints(log.Replace("\"message\"", "\"remark\"", StringComparison.Ordinal)).Should().NotBeEmpty();
        var mended = FindingsSarif.Render([Finding with { Edits = [new Edit(Finding.Place, Finding.Place, "- unmask: discs\n")] }], [], "0.1.0");
        Complaints(mended).Should().BeEmpty();
        Complaints(mended.Replace("\"deletedRegion\"", "\"region\"", StringComparison.Ordinal)).Should().NotBeEmpty();
    }

    private static IReadOnlyList<string> Complaints(string json)
    {
        using var log = JsonDocument.Parse(json);
        var results = Schema.Evaluate(log.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        return results.IsValid
            ? []
            : [.. (results.Details ?? []).Where(d => d.Errors is not null).SelectMany(d => d.Errors!.Select(e => $"{d.InstanceLocation}: {e.Value}"))];
    }

    private static JsonSchema Read()
    {
        var schema = JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Sarif", "sarif-2.1.0-rtm.5.schema.json")))!.AsObject();
        schema["$schema"] = "http://json-schema.org/draft-06/schema#";
        schema.Remove("id");
        return JsonSchema.FromText(schema.ToJsonString(), new BuildOptions { SchemaRegistry = new SchemaRegistry() });
    }
}
