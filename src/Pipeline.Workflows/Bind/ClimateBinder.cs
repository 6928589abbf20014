using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Reads <c>climate</c>: one for the whole day, or one by day and one by night.</summary>
internal static class ClimateBinder
{
    private const string Expected = "{ air: 19 °C, humidity: 55 % }, or the same for day and night apart";

    /// <summary>Keys of a climate.</summary>
    public static readonly Key[] Keys =
    [
        new("air", "temperature of the air", Needed: true, "19 °C"),
        new("humidity", "relative humidity", Needed: true, "55 %"),
        new("surface", "temperature of the pieces where it is known to differ from the air", Needed: false, "16 °C", "that of the air"),
    ];

    public static BenchClimate Bind(Desk desk, SyntaxNode node)
    {
        if (desk.Mapping(node, Expected) is not { } mapping)
            return BenchClimate.Standard;
        if (mapping["day"] is null && mapping["night"] is null)
        {
            var whole = One(desk, mapping);
            return new BenchClimate(whole, whole);
        }

        var (day, night) = ((Climate?)null, (Climate?)null);
        foreach (var (key, value) in mapping.Entries)
        {
            if (key.Text is not ("day" or "night"))
                desk.UnknownKey(key, "a climate by day and night", ["day", "night"]);
            else if (desk.Mapping(value, "{ air: 19 °C, humidity: 55 % }") is { } half)
                (day, night) = key.Text == "day" ? (One(desk, half), night) : (day, One(desk, half));
        }

        foreach (var key in (string[])["day", "night"])
        {
            if (mapping[key] is null)
                desk.MissingKey(mapping, "The climate", key, "its air and humidity, such as { air: 17 °C, humidity: 60 % }");
        }

        return new BenchClimate(day ?? Climate.Standard, night ?? Climate.Standard);
    }

    /// <summary>One climate, or null and a finding.</summary>
    public static Climate? BindOne(Desk desk, SyntaxNode node) =>
        desk.Mapping(node, "{ air: 14 °C, humidity: 85 % }") is { } mapping ? One(desk, mapping) : null;

    private static Climate One(Desk desk, MappingNode mapping)
    {
        Temperature? air = null;
        Temperature? surface = null;
        Share? humidity = null;
        foreach (var (key, value) in mapping.Entries)
        {
            switch (key.Text)
            {
                case "air":
                    air = desk.Said(value, AmountText.Temperature, AmountText.TemperatureExpected);
                    break;
                case "surface":
                    surface = desk.Said(value, AmountText.Temperature, AmountText.TemperatureExpected);
                    break;
                case "humidity":
                    humidity = desk.Said(value, AmountText.Share, AmountText.ShareExpected);
                    break;
                default:
                    desk.UnknownKey(key, "a climate", Keys.Select(known => known.Name));
                    break;
            }
        }

        if (mapping["air"] is null)
            desk.MissingKey(mapping, "The climate", "air", "the temperature, such as 19 °C");
        if (mapping["humidity"] is null)
            desk.MissingKey(mapping, "The climate", "humidity", "the relative humidity, such as 55 %");
        return new Climate(air ?? Climate.Standard.Air, humidity ?? Climate.Standard.Humidity, surface);
    }
}
