using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Reads <c>protection</c>: what keeps dust, vapour and skin contact from the painter, as far as the file says.</summary>
internal static class ProtectionBinder
{
    /// <summary>Keys of a protection.</summary>
    public static readonly Key[] Keys =
    [
        new("extraction", "whether there is extraction to the outside", Needed: false, "yes"),
        new("respirator", "whether a respirator that fits is worn", Needed: false, "yes"),
        new("air-fed", "whether breathing air comes from a hose", Needed: false, "no"),
        new("gloves", "whether gloves that suit are worn", Needed: false, "yes"),
        new("fresh-air", "whether the air of the room changes", Needed: false, "yes"),
        new("flame", "whether a flame, heater or other source of ignition is near", Needed: false, "no"),
        new("waste", "where solvent and resin rinse go: collected or drain", Needed: false, "collected"),
        new("rags", "where oily rags go: spread, water-tin or heaped", Needed: false, "water-tin"),
    ];

    public static Protection Bind(Desk desk, SyntaxNode node)
    {
        var protection = Protection.Unsaid;
        if (desk.Mapping(node, "what protects you, such as { extraction: yes, respirator: yes }") is not { } mapping)
            return protection;
        foreach (var (key, value) in mapping.Entries)
        {
            switch (key.Text)
            {
                case "extraction":
                    protection = protection with { Extraction = desk.YesOrNo(value) };
                    break;
                case "respirator":
                    protection = protection with { Respirator = desk.YesOrNo(value) };
                    break;
                case "air-fed":
                    protection = protection with { AirFed = desk.YesOrNo(value) };
                    break;
                case "gloves":
                    protection = protection with { Gloves = desk.YesOrNo(value) };
                    break;
                case "fresh-air":
                    protection = protection with { FreshAir = desk.YesOrNo(value) };
                    break;
                case "flame":
                    protection = protection with { Flame = desk.YesOrNo(value) };
                    break;
                case "waste":
                    protection = protection with { Waste = desk.Said(value, Choice.Of<Waste>.Read, Choice.Of<Waste>.Expected) };
                    break;
                case "rags":
                    protection = protection with { Rags = desk.Said(value, Choice.Of<Rags>.Read, Choice.Of<Rags>.Expected) };
                    break;
                default:
                    desk.UnknownKey(key, "a protection", Keys.Select(known => known.Name));
                    break;
            }
        }

        return protection;
    }
}
