using System.Text.Json;

namespace Pipeline.Tests.EndToEnd;

/// <summary>A finding as the command tells it in JSON.</summary>
public sealed record Told(string Level, string? Rule, string File, int Line, string Message)
{
    /// <summary>The findings of a document that <c>check --as json</c> prints.</summary>
    public static IReadOnlyList<Told> Of(string json)
    {
        using var document = JsonDocument.Parse(json);
        return
        [
            .. document.RootElement.GetProperty("findings").EnumerateArray()
                .Where(finding => !finding.TryGetProperty("silenced", out var reason) || reason.ValueKind == JsonValueKind.Null)
                .Select(finding => new Told(
                    finding.GetProperty("level").GetString()!,
                    finding.TryGetProperty("rule", out var rule) ? rule.GetString() : null,
                    finding.GetProperty("file").GetString()!,
                    finding.GetProperty("line").GetInt32(),
                    finding.GetProperty("message").GetString()!)),
        ];
    }
}
