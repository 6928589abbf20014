using System.Text.Json.Nodes;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>The schema's part about steps: one definition for each verb in use.</summary>
internal static class StepSchema
{
    public static IEnumerable<(string Name, JsonNode Schema)> Definitions(Shelf shelf)
    {
        var verbs = shelf.Verbs.Names.Select(name => shelf.Verbs.Named(name)!).Where(form => form.Broken is null).ToList();
        var steps = new JsonArray(SchemaParts.Ref("follow"));
        foreach (var form in verbs)
            steps.Add(SchemaParts.Ref(DefinitionOf(form)));
        yield return ("route", new JsonObject { ["type"] = "array", ["minItems"] = 1, ["items"] = new JsonObject { ["anyOf"] = steps } });
        yield return ("follow", Follow());
        foreach (var key in StepReader.CommonKeys)
            yield return (CommonDefinitionOf(key.Name), SchemaParts.Described(Common(key.Name), key.Means, key.Example));
        var choices = verbs.SelectMany(form => form.Particulars).Select(particular => particular.Kind).Where(kind => kind.Choice is not null);
        foreach (var kind in choices.DistinctBy(ChoiceDefinitionOf))
            yield return (ChoiceDefinitionOf(kind), SchemaParts.Choice(kind.Choice!));
        foreach (var form in verbs)
            yield return (DefinitionOf(form), Step(form));
    }

    private static string CommonDefinitionOf(string key) => $"any step {key}";

    private static string ChoiceDefinitionOf(ParticularKind kind) => $"choice {kind.Type.FullName}";

    private static string DefinitionOf(VerbForm form) => $"step {form.Name}";

    private static JsonObject Follow()
    {
        var follow = SchemaParts.Object(
            "Follows a scheme; its placeholders are keys",
            [
                new Key(StepReader.FollowKey, "the scheme", Needed: true, "brass ground"),
                new Key("after", "steps that must be done before", Needed: false, "first brass"),
                new Key("allow", "rules silenced for all its steps, each with the reason", Needed: false, "{}"),
            ],
            key => SchemaParts.Ref(key switch { "allow" => "allow", "after" => "names", _ => "text" }));
        follow["additionalProperties"] = SchemaParts.Ref("names");
        return follow;
    }

    private static JsonObject Step(VerbForm form)
    {
        var properties = new JsonObject { [form.Name] = SchemaParts.Described(SchemaParts.Ref("names"), form.Summary) };
        foreach (var particular in form.Particulars)
        {
            var one = Value(particular.Kind);
            properties[particular.Name] = SchemaParts.Described(particular.IsList ? SchemaParts.OneOrMore(one) : one, particular.Means);
        }

        foreach (var key in StepReader.CommonKeys)
        {
            if (!properties.ContainsKey(key.Name))
                properties[key.Name] = SchemaParts.Ref(CommonDefinitionOf(key.Name));
        }

        return new JsonObject
        {
            ["description"] = form.Summary,
            ["type"] = "object",
            ["properties"] = properties,
            ["required"] = new JsonArray([form.Name, .. form.Particulars.Where(particular => particular.IsNeeded).Select(particular => (JsonNode)particular.Name)]),
            ["additionalProperties"] = false,
        };
    }

    private static JsonObject Value(ParticularKind kind)
    {
        if (kind.Choice is not null)
            return SchemaParts.Ref(ChoiceDefinitionOf(kind));
        return kind.Called switch
        {
            "whole number" => SchemaParts.Number(0, 1_000_000, isWhole: true),
            "number" => SchemaParts.Number(0, 1_000_000),
            "yes or no" => SchemaParts.Ref("yes or no"),
            "mask material" => SchemaParts.Ref("mask material"),
            "areas" => SchemaParts.Ref("names"),
            _ when kind.Pattern is { } pattern => SchemaParts.Pattern(pattern),
            _ => SchemaParts.Ref("text"),
        };
    }

    private static JsonObject Common(string key) => key switch
    {
        "after" => SchemaParts.Ref("names"),
        "at" => SchemaParts.Pattern(Patterns.DateTime),
        "minutes" => new JsonObject { ["anyOf"] = new JsonArray(new JsonObject { ["type"] = "number", ["minimum"] = 0 }, SchemaParts.Pattern(Patterns.DurationOrMinutes)) },
        "set-up" or "put-away" or "unattended" => SchemaParts.Pattern(Patterns.Duration),
        "together" => SchemaParts.Ref("yes or no"),
        "drying" => new JsonObject { ["anyOf"] = new JsonArray(SchemaParts.Ref("drying"), SchemaParts.Pattern(Patterns.DurationRange)) },
        "pace" => SchemaParts.Choice(Choice.Of<Pace>.Words),
        "clean-out" => SchemaParts.Choice(Choice.Of<ToolCleaning>.Words),
        "loads" => SchemaParts.Number(1, 999, isWhole: true),
        "allow" or "climate" or "protection" => SchemaParts.Ref(key),
        _ => SchemaParts.Ref("text"),
    };
}
