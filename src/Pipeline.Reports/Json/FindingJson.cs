using System.Text.Json;
using Pipeline.Abstractions;

namespace Pipeline.Reports;

/// <summary>One finding as the properties of a JSON object; the same in every document.</summary>
internal static class FindingJson
{
    public static void Write(Utf8JsonWriter json, Finding finding)
    {
        json.WriteString("level", finding.Level.Word());
        json.Optional("rule", finding.Rule);
        json.Place(finding.Place);
        json.WriteString("message", finding.Message);
        json.Optional("remedy", finding.Remedy);
        json.Optional("model", finding.Model);
        json.Texts("areas", finding.Areas);
        json.Objects("related", finding.Related, related =>
        {
            json.Place(related.Place);
            json.WriteString("message", related.Message);
        });
        json.Optional("silenced", finding.Silenced);
        if (!finding.Edits.IsEmpty)
            json.Objects("edits", finding.Edits, edit => Write(json, edit));
    }

    private static void Write(Utf8JsonWriter json, Edit edit)
    {
        json.WriteString("file", edit.From.File);
        json.Object("from", () => WritePosition(json, edit.From));
        json.Object("to", () => WritePosition(json, edit.To));
        json.WriteString("text", edit.Text);
    }

    private static void WritePosition(Utf8JsonWriter json, Place place)
    {
        json.WriteNumber("line", place.Line);
        json.WriteNumber("column", place.Column);
    }
}
