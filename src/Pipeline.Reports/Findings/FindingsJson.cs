using Pipeline.Abstractions;

namespace Pipeline.Reports;

/// <summary>Findings as JSON, described by <c>docs/findings.schema.json</c>.</summary>
public static class FindingsJson
{
    /// <summary>The version of the format. A reader may rely on what it knows of a version; a change that breaks a reader raises it.</summary>
    public const int Version = 1;

    /// <summary>All findings, gravest first, then by place; silenced ones too, with their reason.</summary>
    public static string Render(Sequence<Finding> findings) => JsonText.Document(json =>
    {
        json.WriteString("kind", "findings");
        json.WriteNumber("version", Version);
        json.Object("counts", () =>
        {
            foreach (var level in new[] { Level.Error, Level.Warning, Level.Note })
                json.WriteNumber(level.Word(), findings.Speaking().Count(f => f.Level == level));
            json.WriteNumber("silenced", findings.Silent().Count());
        });
        json.Objects("findings", findings.GravestFirst(), finding => FindingJson.Write(json, finding));
    });
}
