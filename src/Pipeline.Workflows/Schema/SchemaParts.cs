using System.Text;
using System.Text.Json.Nodes;

namespace Pipeline.Workflows;

/// <summary>The few shapes of which the schema is made.</summary>
internal static class SchemaParts
{
    /// <summary>A mapping with known keys and no others.</summary>
    public static JsonObject Object(string description, IReadOnlyList<Key> keys, Func<string, JsonNode> values)
    {
        var properties = new JsonObject();
        foreach (var key in keys)
            properties[key.Name] = Described(values(key.Name), key.Means, key.Example);
        var schema = new JsonObject
        {
            ["description"] = description,
            ["type"] = "object",
            ["properties"] = properties,
            ["additionalProperties"] = false,
        };
        if (keys.Any(key => key.Needed))
            schema["required"] = new JsonArray([.. keys.Where(key => key.Needed).Select(key => (JsonNode)key.Name)]);
        return schema;
    }

    /// <summary>A mapping of names of one's own to values of one kind.</summary>
    public static JsonObject Named(JsonNode value) => new() { ["type"] = "object", ["additionalProperties"] = value };

    /// <summary>A value, or a list of at least one.</summary>
    public static JsonObject OneOrMore(JsonNode item) => new()
    {
        ["anyOf"] = new JsonArray(item, new JsonObject { ["type"] = "array", ["minItems"] = 1, ["items"] = item.DeepClone() }),
    };

    public static JsonObject Ref(string definition) => new() { ["$ref"] = "#/$defs/" + DefinitionName(definition) };

    /// <summary>A definition's name without what not every editor takes in a reference.</summary>
    public static string DefinitionName(string definition) => definition.Replace(' ', '-').Replace('+', '.');

    /// <summary>A text of a certain look.</summary>
    public static JsonObject Pattern(string pattern) => new() { ["type"] = "string", ["pattern"] = pattern };

    /// <summary>A plain number, which a YAML reader may hand over as a number or as a text.</summary>
    public static JsonObject Number(double least, double most, bool isWhole = false) => new()
    {
        ["anyOf"] = new JsonArray(
            new JsonObject { ["type"] = isWhole ? "integer" : "number", ["minimum"] = least, ["maximum"] = most },
            Pattern(isWhole ? Patterns.Whole : Patterns.Number)),
    };

    /// <summary>Words exactly as they are.</summary>
    public static JsonObject Words(IEnumerable<string> words) => new() { ["enum"] = new JsonArray([.. words.Select(word => (JsonNode)word)]) };

    /// <summary>Words, offered as they are, accepted in any case and with hyphens or spaces.</summary>
    public static JsonObject Choice(Choice choice) => Choice(choice.Words, choice.Words);

    /// <summary>The same with a description and an example.</summary>
    public static JsonNode Described(JsonNode schema, string? means, string? example = null)
    {
        if (schema is JsonObject described && !string.IsNullOrEmpty(means))
        {
            described["description"] = means;
            if (example is not null && example[0] is not ('{' or '[' or '-' or '"'))
                described["examples"] = new JsonArray(example);
        }

        return schema;
    }

    private static JsonObject Choice(IReadOnlyList<string> offered, IReadOnlyList<string> accepted) => accepted.Count == 0
        ? Ref("text")
        : new JsonObject { ["anyOf"] = new JsonArray(Words(offered), Pattern("^(" + string.Join('|', accepted.Select(AnyCase)) + ")$")) };

    private static string AnyCase(string word)
    {
        var pattern = new StringBuilder(word.Length * 4);
        foreach (var letter in word)
        {
            if (letter is ' ' or '-')
                pattern.Append("[ -]");
            else if (char.IsLetter(letter) && char.ToLowerInvariant(letter) != char.ToUpperInvariant(letter))
                pattern.Append('[').Append(char.ToLowerInvariant(letter)).Append(char.ToUpperInvariant(letter)).Append(']');
            else if (char.IsLetterOrDigit(letter))
                pattern.Append(letter);
            else
                pattern.Append('\\').Append(letter);
        }

        return pattern.ToString();
    }
}
