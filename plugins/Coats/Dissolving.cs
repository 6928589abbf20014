using Pipeline.Abstractions;
using static Pipeline.Abstractions.Liquid;

namespace Pipeline.Plugins.Coats;

/// <summary>What a liquid does to a coat it is rubbed on.</summary>
public enum Bite
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>Softens it if rubbed hard.</summary>
    Softens,

    /// <summary>Lifts it.</summary>
    Lifts,

    /// <summary>Strips it.</summary>
    Strips,
}

/// <summary>What a liquid does to coats of a family, dry to recoat and cured.</summary>
/// <param name="Liquid">Which liquid.</param>
/// <param name="Family">Which family, by its name.</param>
/// <param name="WhenDry">While it is only recoatable.</param>
/// <param name="WhenCured">Once it has cured.</param>
public sealed record Dissolves(Liquid Liquid, string Family, Bite WhenDry, Bite WhenCured);

/// <summary>What re-wets what; all of it common practice.</summary>
public static class Dissolving
{
    // rows: liquids; columns: the families in this order; a pair is dry/cured on the scale 0 to 3 of Bite
    private static readonly string[] Columns =
    [
        "waterborne acrylic", "acrylic lacquer", "cellulose lacquer", "enamel", "oil", "alcohol metallic", "stain", "waterborne varnish", "lacquer varnish",
        "decal film",
    ];

    private static readonly (Liquid[] Liquids, string Bites)[] Rows =
    [
        ([Water, SoapyWater], "10 00 00 00 00 00 21 10 00 22"),
        ([Isopropyl], "32 21 11 10 11 33 32 32 21 22"),
        ([WhiteSpirit], "10 00 00 32 32 11 10 00 00 11"),
        ([Turpentine], "21 11 11 32 32 11 21 21 11 22"),
        ([LacquerThinner, Acetone, Debonder], "33 33 33 33 33 33 33 33 33 33"),
        ([DecalSetter], "10 00 00 00 00 11 11 00 00 00"),
        ([DecalSoftener], "21 11 11 21 22 22 21 11 10 00"),
    ];

    /// <summary>The table, row by row.</summary>
    public static Sequence<Dissolves> All { get; } = Read().ToSequence();

    /// <summary>What a liquid does to a coat; of a family that is not in the table, what it does to the first one with the same carrier. Null if nothing is known.</summary>
    public static Dissolves? Of(Liquid liquid, Family family)
    {
        Dissolves? alike = null;
        foreach (var row in All)
        {
            if (row.Liquid != liquid)
                continue;
            if (row.Family == family.Name)
                return row;
            if (alike is null && CarrierOf(row.Family) == family.Carrier)
                alike = row;
        }

        return alike;
    }

    private static Carrier CarrierOf(string family) => family switch
    {
        "waterborne acrylic" => Carrier.Water,
        "acrylic lacquer" => Carrier.Solvent,
        "enamel" => Carrier.Spirit,
        "alcohol metallic" => Carrier.Alcohol,
        _ => Carrier.None,
    };

    private static IEnumerable<Dissolves> Read()
    {
        foreach (var (liquids, bites) in Rows)
        {
            var cells = bites.Split(' ');
            foreach (var liquid in liquids)
            {
                for (var i = 0; i < Columns.Length; i++)
                    yield return new Dissolves(liquid, Columns[i], (Bite)(cells[i][0] - '0'), (Bite)(cells[i][1] - '0'));
            }
        }
    }
}
