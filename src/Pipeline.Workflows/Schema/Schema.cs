using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Pipeline.Workflows;

/// <summary>
/// A JSON Schema (2020-12) of the workflow file, generated from the verbs and tables in use, so that an editor completes and checks
/// while one types. It accepts every file that binds; what needs more than one place of the file to judge, only the program sees.
/// </summary>
public static class Schema
{
    private static readonly JsonSerializerOptions Writing = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The schema as JSON text that ends in a line feed. The same trade gives the same text.</summary>
    public static string Generate(Trade trade)
    {
        ArgumentNullException.ThrowIfNull(trade);
        var shelf = new Shelf(trade);
        var schema = SchemaParts.Object("A workflow file", FileForm.Keys, key => TableForm.Named(key) is { } table ? table.Value(shelf) : Top(key));
        var whole = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "Pipeline workflow",
        };
        foreach (var (name, node) in schema.ToList())
        {
            schema.Remove(name);
            whole[name] = node;
        }

        // A file of a batch in several files may leave the bench and the kits to the others.
        whole["required"] = new JsonArray("batch");
        whole["$defs"] = Definitions(trade, shelf);
        return whole.ToJsonString(Writing) + "\n";
    }

    private static JsonNode Top(string key) => key switch
    {
        "due" => SchemaParts.Pattern(Patterns.DateTime),
        "pace" => SchemaParts.Choice(Choice.Of<Pace>.Words),
        "aim" => SchemaParts.OneOrMore(SchemaParts.Choice(Choice.Of<BatchAim>.Words)),
        "bench" => SchemaParts.Ref("bench"),
        "families" => SchemaParts.Named(SchemaParts.Ref("family figures")),
        "paints" => SchemaParts.Named(SchemaParts.Ref("paint")),
        "mixes" => SchemaParts.Named(SchemaParts.Ref("mix")),
        "schemes" => SchemaParts.Named(SchemaParts.Ref("scheme")),
        "kits" => SchemaParts.OneOrMore(SchemaParts.Ref("kit")),
        "allow" => SchemaParts.Ref("allow"),
        _ => SchemaParts.Ref("text"),
    };

    private static JsonObject Definitions(Trade trade, Shelf shelf)
    {
        var family = new JsonObject { ["anyOf"] = new JsonArray(SchemaParts.Words(shelf.FamilyNames), SchemaParts.Ref("text")) };
        var definitions = new JsonObject
        {
            ["text"] = new JsonObject { ["type"] = new JsonArray("string", "number", "boolean") },
            [SchemaParts.DefinitionName("yes or no")] = new JsonObject { ["anyOf"] = new JsonArray(new JsonObject { ["type"] = "boolean" }, SchemaParts.Pattern(Patterns.YesOrNo)) },
            ["names"] = SchemaParts.OneOrMore(SchemaParts.Ref("text")),
            ["allow"] = SchemaParts.Named(SchemaParts.Ref("text")),
            ["drying"] = SchemaParts.Object("Times by drying state", [.. DryingBinder.States.Select(state => new Key(state.Key, "time to this state, or never", Needed: false, "12-24 h"))], _ => SchemaParts.Pattern(Patterns.DurationRangeOrNever)),
            ["family"] = family,
            ["material"] = new JsonObject { ["anyOf"] = new JsonArray(SchemaParts.Words(shelf.MaterialNames), SchemaParts.Ref("text")) },
            [SchemaParts.DefinitionName("mask material")] = new JsonObject { ["anyOf"] = new JsonArray(SchemaParts.Words(shelf.MaskMaterialNames), SchemaParts.Ref("text")) },
        };
        if (shelf.Rules.Count > 0)
            definitions["allow"]!["propertyNames"] = SchemaParts.Words(shelf.Rules);
        foreach (var (name, node) in BenchSchema.Definitions(shelf).Concat(KitSchema.Definitions()).Concat(StepSchema.Definitions(shelf)))
            definitions[SchemaParts.DefinitionName(name)] = node;
        return definitions;
    }
}
