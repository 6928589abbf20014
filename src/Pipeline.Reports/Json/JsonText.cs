using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Unicode;
using NodaTime;
using NodaTime.Text;
using Pipeline.Abstractions;

namespace Pipeline.Reports;

/// <summary>JSON as the reports write it: indented by two, one line end, readable letters, and nothing that could mislead a terminal or a page.</summary>
internal static class JsonText
{
    private static readonly JsonWriterOptions Options = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.Create(Letters()) };

    private static readonly ZonedDateTimePattern MomentPattern = ZonedDateTimePattern.CreateWithInvariantCulture("uuuu'-'MM'-'dd'T'HH':'mm':'sso<Z+HH:mm>", null);

    /// <summary>A document whose root is an object.</summary>
    public static string Document(Action<Utf8JsonWriter> properties)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Options))
        {
            json.WriteStartObject();
            properties(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length) + "\n";
    }

    /// <summary>A list of objects.</summary>
    public static void Objects<T>(this Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> properties)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            properties(item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>A list of texts.</summary>
    public static void Texts(this Utf8JsonWriter json, string name, IEnumerable<string> items)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
            json.WriteStringValue(item);
        json.WriteEndArray();
    }

    /// <summary>A nested object.</summary>
    public static void Object(this Utf8JsonWriter json, string name, Action properties)
    {
        json.WriteStartObject(name);
        properties();
        json.WriteEndObject();
    }

    /// <summary>A text, left out if it is null.</summary>
    public static void Optional(this Utf8JsonWriter json, string name, string? value)
    {
        if (value is not null)
            json.WriteString(name, value);
    }

    /// <summary>A moment, left out if it is null.</summary>
    public static void Optional(this Utf8JsonWriter json, string name, ZonedDateTime? value)
    {
        if (value is { } moment)
            json.Moment(name, moment);
    }

    /// <summary>A moment as RFC 3339 has it: local time with its offset from UTC.</summary>
    public static void Moment(this Utf8JsonWriter json, string name, ZonedDateTime value) => json.WriteString(name, MomentPattern.Format(value));

    /// <summary>A volume in mL, to the thousandth.</summary>
    public static void Millilitres(this Utf8JsonWriter json, string name, double value) =>
        json.WriteNumber(name, Math.Round((decimal)Math.Clamp(double.IsFinite(value) ? value : 0, 0, 1e12), 3, MidpointRounding.AwayFromZero));

    /// <summary>A place.</summary>
    public static void Place(this Utf8JsonWriter json, Place place)
    {
        json.WriteString("file", place.File);
        json.WriteNumber("line", place.Line);
        json.WriteNumber("column", place.Column);
    }

    private static TextEncoderSettings Letters()
    {
        var settings = new TextEncoderSettings(UnicodeRanges.All);
        for (var c = '\0'; c < char.MaxValue; c++)
        {
            if (char.GetUnicodeCategory(c) is UnicodeCategory.Format)
                settings.ForbidCharacter(c);
        }

        return settings;
    }
}
