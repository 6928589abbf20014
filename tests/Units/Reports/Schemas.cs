using System.Text.Json;
using Json.Schema;

namespace Pipeline.Tests.Units.Reports;

/// <summary>The schemas in docs/, by which the JSON reports are judged.</summary>
internal sealed class Schemas
{
    private static readonly BuildOptions Together = new() { SchemaRegistry = new SchemaRegistry() };
    private readonly JsonSchema schema;

    private Schemas(string name) => schema = JsonSchema.FromText(File.ReadAllText(Path.Combine(Golden.Repository, "docs", $"{name}.schema.json")), Together);

    public static Schemas Findings { get; } = new("findings");

    /// <summary>Refers to the one of findings, which therefore stands before it.</summary>
    public static Schemas Plan { get; } = new("plan");

    public static Schemas Comparison { get; } = new("comparison");

    /// <summary>Where and how a document departs from the schema.</summary>
    public IReadOnlyList<string> Complaints(string json)
    {
        using var document = JsonDocument.Parse(json);
        var results = schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List, RequireFormatValidation = true });
        return results.IsValid
            ? []
            : [.. (results.Details ?? []).Where(d => d.Errors is not null).SelectMany(d => d.Errors!.Select(e => $"{d.InstanceLocation}: {e.Value}"))];
    }
}
