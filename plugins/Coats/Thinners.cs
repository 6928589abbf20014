using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats;

/// <summary>
/// What thinners are made of, and what they curdle; all rows common practice. Alcohol in waterborne or lacquer paint, and lacquer thinner in
/// enamel, are used by many and are let pass.
/// </summary>
public sealed class Thinners : Catalogue<Thinner>
{
    /// <inheritdoc/>
    public override IEnumerable<Thinner> Entries =>
    [
        // the first row whose name is part of a thinner's counts
        .. Rows(Carrier.Spirit, [Carrier.Water, Carrier.Solvent, Carrier.Alcohol], "white spirit", "turpentine", "odourless", "enamel"),
        .. Rows(Carrier.Solvent, [Carrier.Water], "lacquer", "acetone", "cellulose", "levelling"),
        .. Rows(Carrier.Alcohol, [Carrier.Spirit], "isopropyl", "alcohol"),
        .. Rows(Carrier.Water, [Carrier.Solvent, Carrier.Spirit, Carrier.Alcohol], "water", "acrylic thinner", "stain medium"),
    ];

    private static IEnumerable<Thinner> Rows(Carrier carrier, Sequence<Carrier> curdles, params string[] names) =>
        names.Select(name => new Thinner { Name = name, Carrier = carrier, Curdles = curdles, Source = "common practice" });
}
