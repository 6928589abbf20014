using System.Text.Json;
using Pipeline.Abstractions;

namespace Pipeline.Reports;

/// <summary>What a SARIF log says of a rule.</summary>
/// <param name="Name">The rule's name, as in <see cref="Finding.Rule"/>.</param>
/// <param name="Level">The level it usually speaks with.</param>
/// <param name="Summary">One sentence.</param>
/// <param name="Help">Its page, in Markdown.</param>
public sealed record RulePage(string Name, Level Level, string Summary, string Help);

/// <summary>Findings in the OASIS Static Analysis Results Interchange Format, SARIF 2.1.0, which editors and build services show in place.</summary>
public static class FindingsSarif
{
    private const string Schema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

    /// <summary>A log with one run.</summary>
    /// <param name="findings">Silenced ones become suppressed results with their reason.</param>
    /// <param name="rules">The rules at work; those that a finding names but the list lacks are left to the finding.</param>
    /// <param name="version">The program's version.</param>
    public static string Render(Sequence<Finding> findings, Sequence<RulePage> rules, string version)
    {
        var places = rules.Select((rule, index) => (rule.Name, index)).ToDictionary(r => r.Name, r => r.index, StringComparer.Ordinal);
        return JsonText.Document(json =>
        {
            json.WriteString("$schema", Schema);
            json.WriteString("version", "2.1.0");
            json.WriteStartArray("runs");
            json.WriteStartObject();
            json.Object("tool", () => json.Object("driver", () =>
            {
                json.WriteString("name", "Pipeline");
                json.WriteString("version", version);
                json.Objects("rules", rules, rule => WriteRule(json, rule));
            }));
            json.WriteString("columnKind", "utf16CodeUnits");
            json.Objects("results", findings.GravestFirst(), finding => WriteResult(json, finding, places));
            json.WriteEndObject();
            json.WriteEndArray();
        });
    }

    private static void WriteRule(Utf8JsonWriter json, RulePage rule)
    {
        json.WriteString("id", rule.Name);
        json.Object("shortDescription", () => json.WriteString("text", rule.Summary));
        json.Object("help", () =>
        {
            json.WriteString("text", rule.Help);
            json.WriteString("markdown", rule.Help);
        });
        json.Object("defaultConfiguration", () => json.WriteString("level", rule.Level.Word()));
    }

    private static void WriteResult(Utf8JsonWriter json, Finding finding, Dictionary<string, int> places)
    {
        if (finding.Rule is { } rule)
        {
            json.WriteString("ruleId", rule);
            if (places.TryGetValue(rule, out var index))
                json.WriteNumber("ruleIndex", index);
        }

        json.WriteString("level", finding.Level.Word());
        json.Object("message", () => json.WriteString("text", WithRemedy(finding)));
        json.WriteStartArray("locations");
        json.WriteStartObject();
        WritePlace(json, finding.Place);
        if (finding.Model is { } model)
        {
            json.WriteStartArray("logicalLocations");
            foreach (var name in finding.Areas.IsEmpty ? [model] : finding.Areas.Select(area => $"{model}/{area}"))
            {
                json.WriteStartObject();
                json.WriteString("fullyQualifiedName", name);
                json.WriteString("kind", finding.Areas.IsEmpty ? "model" : "area");
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        json.WriteEndObject();
        json.WriteEndArray();
        if (!finding.Related.IsEmpty)
        {
            json.Objects("relatedLocations", finding.Related, related =>
            {
                WritePlace(json, related.Place);
                json.Object("message", () => json.WriteString("text", PlainMessage(related.Message)));
            });
        }

        if (!finding.Edits.IsEmpty)
            json.Objects("fixes", [finding], fix => WriteFix(json, fix));
        if (finding.Silenced is { } reason)
        {
            json.Objects("suppressions", [reason], text =>
            {
                json.WriteString("kind", "inSource");
                json.WriteString("justification", text);
            });
        }
    }

    private static void WriteFix(Utf8JsonWriter json, Finding finding)
    {
        if (finding.Remedy is { Length: > 0 } remedy)
            json.Object("description", () => json.WriteString("text", PlainMessage(remedy)));
        json.Objects("artifactChanges", finding.Edits.GroupBy(edit => edit.From.File, StringComparer.Ordinal), file =>
        {
            json.Object("artifactLocation", () => json.WriteString("uri", Uri(file.Key)));
            json.Objects("replacements", file, edit =>
            {
                json.Object("deletedRegion", () =>
                {
                    json.WriteNumber("startLine", edit.From.Line);
                    json.WriteNumber("startColumn", edit.From.Column);
                    json.WriteNumber("endLine", edit.To.Line);
                    json.WriteNumber("endColumn", edit.To.Column);
                });
                json.Object("insertedContent", () => json.WriteString("text", edit.Text));
            });
        });
    }

    private static void WritePlace(Utf8JsonWriter json, Place place) => json.Object("physicalLocation", () =>
    {
        json.Object("artifactLocation", () => json.WriteString("uri", Uri(place.File)));
        json.Object("region", () =>
        {
            json.WriteNumber("startLine", Math.Max(1, place.Line));
            json.WriteNumber("startColumn", Math.Max(1, place.Column));
        });
    });

    private static string WithRemedy(Finding finding) =>
        PlainMessage(finding.Remedy is { Length: > 0 } remedy ? $"{finding.Message} {remedy}" : finding.Message);

    /// <summary>In a SARIF message braces make placeholders (§3.11.5) and "[text](1)" makes a link (§3.11.6); a file's words must make neither.</summary>
    private static string PlainMessage(string text)
    {
        var braced = text.Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal);
        return braced.Contains("](", StringComparison.Ordinal)
            ? braced.Replace("[", "\\[", StringComparison.Ordinal).Replace("]", "\\]", StringComparison.Ordinal)
            : braced;
    }

    /// <summary>A file name as a URI reference (RFC 3986): separators kept, everything else percent-encoded.</summary>
    private static string Uri(string file)
    {
        var name = file.Replace('\\', '/');
        var hasDrive = name.Length > 1 && name[1] == ':' && char.IsAsciiLetter(name[0]);
        var encoded = string.Join('/', name.Split('/').Select(System.Uri.EscapeDataString));
        return hasDrive ? $"file:///{name[0]}:{encoded[4..]}"
            : name.StartsWith("//", StringComparison.Ordinal) ? $"file:{encoded}"
            : name.StartsWith('/') ? $"file://{encoded}"
            : encoded;
    }
}
