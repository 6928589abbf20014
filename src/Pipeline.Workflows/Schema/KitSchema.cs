using System.Text.Json.Nodes;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>The schema's part about kits, models and schemes.</summary>
internal static class KitSchema
{
    public static IEnumerable<(string Name, JsonNode Schema)> Definitions()
    {
        yield return ("kit", SchemaParts.Object("A box or order", KitBinder.KitKeys, key => key switch
        {
            "due" => SchemaParts.Pattern(Patterns.DateTime),
            "for" => SchemaParts.Choice(Choice.Of<Purpose>.Words),
            "models" => SchemaParts.OneOrMore(SchemaParts.Ref("model")),
            _ => SchemaParts.Ref("text"),
        }));
        yield return ("area", SchemaParts.Object("An area that says more than its size", ModelBinder.AreaKeys, key => key == "size" ? SchemaParts.Pattern(Patterns.Size) : SchemaParts.Ref("yes or no")));
        yield return ("areas", SchemaParts.Named(new JsonObject { ["anyOf"] = new JsonArray(SchemaParts.Pattern(Patterns.Size), SchemaParts.Ref("area")) }));
        yield return ("part", SchemaParts.Object("A sub-assembly painted apart", ModelBinder.PartKeys, key => SchemaParts.Ref(key)));
        yield return ("model", Model());
        yield return ("scheme", SchemaParts.Object("A stretch of route to follow in several models", Schemes.Keys, key => SchemaParts.Ref(key == "route" ? "route" : "names")));
    }

    private static JsonObject Model()
    {
        var model = SchemaParts.Object("One kind of piece", ModelBinder.Keys, key => key switch
        {
            "count" => SchemaParts.Number(1, 9_999, isWhole: true),
            "handled" => SchemaParts.Ref("yes or no"),
            "for" => SchemaParts.Choice(Choice.Of<Purpose>.Words),
            "material" or "areas" or "route" or "allow" or "storage" => SchemaParts.Ref(key),
            "parts" => SchemaParts.Named(SchemaParts.Ref("part")),
            "due" => SchemaParts.Pattern(Patterns.DateTime),
            "weight" => SchemaParts.Number(0, 1_000),
            _ => SchemaParts.Ref("text"),
        });
        // A model whose every part names its material need not name one itself.
        model["required"] = new JsonArray("model", "route");
        model["oneOf"] = new JsonArray(
            new JsonObject { ["required"] = new JsonArray("areas", "material") },
            new JsonObject { ["required"] = new JsonArray("parts") });
        return model;
    }
}
