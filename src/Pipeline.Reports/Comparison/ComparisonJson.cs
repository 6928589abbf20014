using System.Text.Json;
using NodaTime;
using Pipeline.Planning;

namespace Pipeline.Reports;

/// <summary>Two plans compared, as JSON, described by <c>docs/comparison.schema.json</c>.</summary>
public static class ComparisonJson
{
    /// <summary>The version of the format.</summary>
    public const int Version = 1;

    /// <summary>The comparison as a JSON document.</summary>
    public static string Render(PlanComparison both)
    {
        ArgumentNullException.ThrowIfNull(both);
        return JsonText.Document(json =>
        {
            json.WriteString("kind", "comparison");
            json.WriteNumber("version", Version);
            json.WriteString("batch", both.Batch);
            json.WriteString("zone", both.Zone.Id);
            if (both.Done is { } done)
            {
                json.Object("done", () =>
                {
                    json.Moment("until", done.Until.InZone(both.Zone));
                    json.WriteNumber("tasks", done.Tasks.Count);
                });
            }

            json.WriteNumber("unmoved", both.Unmoved);
            json.Objects("moves", both.Moves, move =>
            {
                json.WriteBoolean("toAnotherSitting", move.IsToAnotherSitting);
                json.Object("before", () => Write(json, both.Zone, move.Before));
                json.Object("after", () => Write(json, both.Zone, move.After));
            });
            json.Objects("added", both.Added, task => Write(json, both.Zone, task));
            json.Objects("gone", both.Gone, task => Write(json, both.Zone, task));
            json.Objects("finishes", both.Finishes, finish =>
            {
                json.WriteString("model", finish.Model);
                json.Optional("before", finish.Before?.InZone(both.Zone));
                json.Optional("after", finish.After?.InZone(both.Zone));
                json.Optional("due", finish.Due?.InZone(both.Zone));
            });
            Write(json, "sittings", both.Sittings);
            Write(json, "attendedMinutes", both.AttendedMinutes);
            Write(json, "cleanOuts", both.CleanOuts);
        });
    }

    private static void Write(Utf8JsonWriter json, DateTimeZone zone, WrittenTask task)
    {
        json.WriteString("model", task.Model);
        json.WriteString("step", task.Step);
        json.WriteNumber("firstUnit", task.FirstUnit);
        json.WriteNumber("units", task.Units);
        json.WriteNumber("ofUnits", task.OfUnits);
        json.WriteNumber("coat", task.Coat);
        json.WriteNumber("ofCoats", task.OfCoats);
        json.WriteString("painter", task.Painter);
        json.Moment("sitting", task.Sitting.InZone(zone));
        json.Moment("start", task.Start.InZone(zone));
        json.Moment("end", task.End.InZone(zone));
        json.WriteString("words", task.Words);
    }

    private static void Write(Utf8JsonWriter json, string name, Figures figures) => json.Object(name, () =>
    {
        json.WriteNumber("before", figures.Before);
        json.WriteNumber("after", figures.After);
    });
}
