using Pipeline.Abstractions;
using static Pipeline.Abstractions.DryingRange;

namespace Pipeline.Plugins.Preparing;

/// <summary>How long glues, fillers and wet pieces take at 20–23 °C and 45–55 % relative humidity; all rows common practice.</summary>
public sealed class Settings : Catalogue<Setting>
{
    /// <summary>A piece that was washed, stripped, or sanded, trimmed or drilled wet.</summary>
    public const string WetPiece = "wet piece";

    /// <summary>The same of porous material.</summary>
    public const string WetPorousPiece = "wet porous piece";

    /// <inheritdoc/>
    public override IEnumerable<Setting> Entries =>
    [
        Row("superglue", Carrier.Reaction, Minutes(5, 5)),
        Row("foam-safe superglue", Carrier.Reaction, Minutes(5, 5)),
        Row("PVA", Carrier.Water, Hours(2, 4)), // a thin joint; a thick bed is texture paste
        Row("epoxy", Carrier.Reaction, Hours(3, 6), sandable: Hours(12, 24)),
        Row("styrene cement", Carrier.Solvent, Hours(1, 2), sandable: Hours(24, 24)),
        Row("epoxy putty", Carrier.Reaction, Hours(12, 24)),
        Row("solvent putty", Carrier.Solvent, Hours(4, 24)), // by depth
        Row("water filler", Carrier.Water, Hours(1, 4)),
        Row(WetPiece, Carrier.Water, Hours(1, 2)),
        Row(WetPorousPiece, Carrier.Water, Hours(12, 24)),
    ];

    /// <summary>How long a piece that got wet takes to dry.</summary>
    internal static Setting Dries(Job job) => job.Tables.Setting(job.IsAnywhere(material => material.IsPorous) ? WetPorousPiece : WetPiece);

    private static Setting Row(string name, Carrier carrier, DryingRange sets, DryingRange? sandable = null) =>
        new() { Name = name, Carrier = carrier, Sets = sets, Sandable = sandable, Source = "common practice" };
}
