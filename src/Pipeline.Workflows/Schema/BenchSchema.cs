using System.Text.Json.Nodes;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>The schema's part about the bench and the shelf.</summary>
internal static class BenchSchema
{
    public static IEnumerable<(string Name, JsonNode Schema)> Definitions(Shelf shelf)
    {
        yield return ("bench", SchemaParts.Object("Where and when the work is done", BenchBinder.Keys, key => Bench(key, shelf)));
        yield return ("sitting", Sitting());
        yield return ("climate", SchemaParts.Object("The air over the bench", ClimateBinder.Keys, key => SchemaParts.Pattern(key == "humidity" ? Patterns.Share : Patterns.Temperature)));
        yield return ("storage", SchemaParts.Object("Where something comes from", StorageBinder.Keys, key => SchemaParts.Pattern(key == "at" ? Patterns.Temperature : Patterns.Duration)));
        yield return ("protection", SchemaParts.Object("What protects the painter", ProtectionBinder.Keys, Protection));
        yield return ("family figures", SchemaParts.Object("Figures of a coating family", FamilyBinder.Keys, FamilyFigure));
        yield return ("paint", SchemaParts.Object("A paint", PaintBinder.Keys, Label));
        yield return ("mix", SchemaParts.Object("A mix of paints", MixBinder.Keys, Label));
        yield return ("thinner", SchemaParts.Object("What a mix is thinned with", MixBinder.ThinnerKeys, Thinner));
    }

    private static JsonNode Bench(string key, Shelf shelf) => key switch
    {
        "sittings" or "extra" => SchemaParts.OneOrMore(SchemaParts.Ref("sitting")),
        "away" => SchemaParts.OneOrMore(SchemaParts.Pattern(Patterns.Dates)),
        "painters" => Painters(shelf),
        "tools" => SchemaParts.Named(SchemaParts.Number(1, 1000, isWhole: true)),
        "climate" => Climate(),
        "cup" => SchemaParts.Pattern(Patterns.Volume),
        "protection" => SchemaParts.Ref("protection"),
        "most-per-day" => SchemaParts.Pattern(Patterns.Duration),
        _ => new JsonObject { ["type"] = "string" },
    };

    private static JsonObject Sitting()
    {
        var sitting = SchemaParts.Object("A stretch of time at the bench", SittingBinder.Keys, key => key switch
        {
            "days" => SchemaParts.OneOrMore(SchemaParts.Pattern(Patterns.Days)),
            "date" => SchemaParts.Pattern(Patterns.Date),
            _ => SchemaParts.Pattern(Patterns.Time),
        });
        sitting["oneOf"] = new JsonArray(new JsonObject { ["required"] = new JsonArray("days") }, new JsonObject { ["required"] = new JsonArray("date") });
        return sitting;
    }

    private static JsonObject Painters(Shelf shelf)
    {
        var skilled = SchemaParts.Object("A painter, the verbs they do and the days they come", BenchBinder.PainterKeys, key => key switch
        {
            "painter" => SchemaParts.Ref("text"),
            "does" => SchemaParts.OneOrMore(SchemaParts.Words(shelf.Verbs.Names)),
            _ => SchemaParts.OneOrMore(new JsonObject { ["anyOf"] = new JsonArray(SchemaParts.Pattern(Patterns.Days), SchemaParts.Pattern(Patterns.Date)) }),
        });
        var named = new JsonObject { ["anyOf"] = new JsonArray(SchemaParts.Ref("text"), skilled) };
        return new JsonObject
        {
            ["anyOf"] = new JsonArray(SchemaParts.Number(1, 20, isWhole: true), skilled.DeepClone(), new JsonObject { ["type"] = "array", ["minItems"] = 1, ["items"] = named }),
        };
    }

    private static JsonObject Climate() => new()
    {
        ["anyOf"] = new JsonArray(
            SchemaParts.Ref("climate"),
            SchemaParts.Object("The air by day and by night", [new Key("day", "while somebody works", Needed: true, "{}"), new Key("night", "while nobody does", Needed: true, "{}")], _ => SchemaParts.Ref("climate"))),
    };

    private static JsonNode Protection(string key) => key switch
    {
        "waste" => SchemaParts.Choice(Choice.Of<Waste>.Words),
        "rags" => SchemaParts.Choice(Choice.Of<Rags>.Words),
        _ => SchemaParts.Ref("yes or no"),
    };

    private static JsonNode FamilyFigure(string key) => key switch
    {
        "like" => SchemaParts.Ref("family"),
        "recoat-open" or "open-time" or "pot-life" => SchemaParts.Pattern(Patterns.Duration),
        "coldest" or "warmest" or "warmest-sprayed" => SchemaParts.Pattern(Patterns.Temperature),
        "dampest" or "dampest-sprayed-matt" or "driest-sprayed" => SchemaParts.Pattern(Patterns.Share),
        "thinners" or "cleaners" => SchemaParts.Ref("names"),
        "isocyanate" => SchemaParts.Ref("yes or no"),
        _ => SchemaParts.Ref("drying"),
    };

    private static JsonNode Label(string key) => key switch
    {
        "family" => SchemaParts.Ref("family"),
        "sheen" => SchemaParts.Choice(Choice.Of<Sheen>.Words),
        "colour" => SchemaParts.Pattern(Patterns.Colour),
        "clear" or "metallic" => SchemaParts.Ref("yes or no"),
        "stock" or "makes" => SchemaParts.Pattern(Patterns.Volume),
        "drying" => SchemaParts.Ref("drying"),
        "pot-life" => SchemaParts.Pattern(Patterns.Duration),
        "parts" => SchemaParts.Named(SchemaParts.Number(0, 1000)),
        "thinner" or "storage" => SchemaParts.Ref(key),
        _ => SchemaParts.Ref("text"),
    };

    private static JsonNode Thinner(string key) => key switch
    {
        "share" => SchemaParts.Pattern(Patterns.Share),
        "of" => SchemaParts.Choice(Choice.Of<ShareOf>.Words),
        _ => SchemaParts.Ref("text"),
    };
}
