using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats;

/// <summary>What thinners are made of, by the words in their names, and what they curdle. All rows common practice.</summary>
internal static class Thinners
{
    // the first row that fits counts
    private static readonly (string Word, Carrier Carrier)[] Words =
    [
        ("white spirit", Carrier.Spirit),
        ("turpentine", Carrier.Spirit),
        ("odourless", Carrier.Spirit),
        ("enamel", Carrier.Spirit),
        ("lacquer", Carrier.Solvent),
        ("acetone", Carrier.Solvent),
        ("cellulose", Carrier.Solvent),
        ("levelling", Carrier.Solvent),
        ("isopropyl", Carrier.Alcohol),
        ("alcohol", Carrier.Alcohol),
        ("water", Carrier.Water),
        ("acrylic thinner", Carrier.Water),
        ("stain medium", Carrier.Water),
    ];

    /// <summary>What a thinner of that name carries, or null if its name does not say.</summary>
    public static Carrier? CarrierOf(string thinner)
    {
        foreach (var (word, carrier) in Words)
        {
            if (thinner.Contains(word, StringComparison.OrdinalIgnoreCase))
                return carrier;
        }

        return null;
    }

    /// <summary>
    /// True for a thinner that curdles a family. Alcohol in waterborne or lacquer paint, and lacquer thinner in enamel, are used by many
    /// and are let pass.
    /// </summary>
    public static bool Curdle(Carrier family, Carrier thinner) => (family, thinner) switch
    {
        (Carrier.Water, Carrier.Solvent or Carrier.Spirit) => true,
        (Carrier.Solvent, Carrier.Water or Carrier.Spirit) => true,
        (Carrier.Spirit, Carrier.Water or Carrier.Alcohol) => true,
        (Carrier.Alcohol, Carrier.Water or Carrier.Spirit) => true,
        _ => false,
    };
}
