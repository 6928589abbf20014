using System.Globalization;
using Pipeline.Abstractions;
using static Pipeline.Abstractions.Liquid;

namespace Pipeline.Plugins.Coats;

/// <summary>
/// What re-wets what; all of it common practice. A pair of figures is what a liquid does to a coat that is dry, and to one that has cured:
/// 0 nothing, 1 softens it if rubbed, 2 lifts it, 3 strips it.
/// </summary>
public sealed class Rewetting : Catalogue<Rewets>
{
    // columns in this order
    private static readonly string[] Coats =
    [
        "waterborne acrylic", "acrylic lacquer", "cellulose lacquer", "enamel", "oil", "alcohol metallic", "stain", "waterborne varnish", "lacquer varnish",
        "decal film",
    ];

    private static readonly (Liquid[] Liquids, string Bites)[] Rows =
    [
        ([Water, SoapyWater], "1/0 0/0 0/0 0/0 0/0 0/0 2/1 1/0 0/0 2/2"),
        ([Isopropyl], "3/2 2/1 1/1 1/0 1/1 3/3 3/2 3/2 2/1 2/2"),
        ([WhiteSpirit], "1/0 0/0 0/0 3/2 3/2 1/1 1/0 0/0 0/0 1/1"),
        ([Turpentine], "2/1 1/1 1/1 3/2 3/2 1/1 2/1 2/1 1/1 2/2"),
        ([LacquerThinner, Acetone, Debonder], "3/3 3/3 3/3 3/3 3/3 3/3 3/3 3/3 3/3 3/3"),
        ([DecalSetter], "1/0 0/0 0/0 0/0 0/0 1/1 1/1 0/0 0/0 0/0"),
        // it shapes the decal, which is what it is for
        ([DecalSoftener], "2/1 1/1 1/1 2/1 2/2 2/2 2/1 1/1 1/0 0/0"),
    ];

    /// <inheritdoc/>
    public override IEnumerable<Rewets> Entries =>
        from row in Rows
        let cells = row.Bites.Split(' ')
        from liquid in row.Liquids
        from column in Enumerable.Range(0, Coats.Length)
        select new Rewets
        {
            Liquid = liquid,
            Coat = Coats[column],
            WhenDry = (Bite)int.Parse(cells[column].AsSpan(0, 1), CultureInfo.InvariantCulture),
            WhenCured = (Bite)int.Parse(cells[column].AsSpan(2, 1), CultureInfo.InvariantCulture),
            Source = "common practice",
        };
}
