using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Reads <c>storage</c>: where pieces or paint come from.</summary>
internal static class StorageBinder
{
    private const string Expected = "how warm it is there, such as { at: 8 °C, in-the-room-for: 2 h }";

    /// <summary>Keys of a storage.</summary>
    public static readonly Key[] Keys =
    [
        new("at", "how warm it is where it is kept", Needed: true, "8 °C"),
        new("in-the-room-for", "how long before its first use it is brought to the bench", Needed: false, "2 h"),
    ];

    public static Storage? Bind(Desk desk, SyntaxNode node)
    {
        if (desk.Mapping(node, Expected) is not { } mapping)
            return null;
        Temperature? at = null;
        Drying? inTheRoomFor = null;
        foreach (var (key, value) in mapping.Entries)
        {
            if (key.Text == "at")
                at = desk.Said(value, AmountText.Temperature, AmountText.TemperatureExpected);
            else if (key.Text == "in-the-room-for")
                inTheRoomFor = desk.Said(value, DurationText.Drying, DurationText.Expected);
            else
                desk.UnknownKey(key, "a storage", Keys.Select(known => known.Name));
        }

        if (mapping["at"] is null)
            desk.MissingKey(mapping, "The storage", "at", "how warm it is there, such as 8 °C");
        return at is { } temperature ? new Storage(temperature, inTheRoomFor) : null;
    }
}
