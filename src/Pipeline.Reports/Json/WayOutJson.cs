using System.Text.Json;
using NodaTime.Text;
using Pipeline.Planning;

namespace Pipeline.Reports;

/// <summary>A way out as the properties of a JSON object.</summary>
internal static class WayOutJson
{
    public static void Write(Utf8JsonWriter json, WayOut way)
    {
        json.WriteString("words", way.Words);
        json.Moment("ready", way.Ready);
        json.WriteNumber("lateMinutes", way.LateMinutes);
        json.WriteBoolean("fillsSittings", way.FillsSittings);
        switch (way.Change)
        {
            case Change.Brisk brisk:
                json.WriteString("change", "brisk");
                json.Objects("steps", brisk.Steps, step =>
                {
                    json.WriteString("model", step.Model);
                    json.WriteString("step", step.Step);
                    json.Object("place", () => json.Place(step.Place));
                });
                break;
            case Change.MoreSittings more:
                json.WriteString("change", "more-sittings");
                json.Objects("sittings", more.Sittings, sitting =>
                {
                    json.Moment("from", sitting.From);
                    json.Moment("to", sitting.To);
                });
                break;
            case Change.OneMorePainter more:
                json.WriteString("change", "one-more-painter");
                json.Texts("days", more.Days.Select(LocalDatePattern.Iso.Format));
                break;
            case Change.LeaveOut leave:
                json.WriteString("change", "leave-out");
                json.WriteString("model", leave.Model);
                break;
            case var other:
                throw new InvalidOperationException($"Unknown change {other}.");
        }
    }
}
