using Pipeline.Abstractions;
using Pipeline.Plugins.Safety;

namespace Pipeline.Plugins.Preparing;

/// <summary>What gaps are filled with.</summary>
public enum Filler
{
    /// <summary>Two-part putty.</summary>
    EpoxyPutty,

    /// <summary>Putty that dries by losing solvent.</summary>
    SolventPutty,

    /// <summary>Acrylic or plaster filler that dries by losing water.</summary>
    WaterFiller,
}

/// <summary>How fillers cure; all figures common practice.</summary>
internal static class Fillers
{
    public static DryingRange Cures(Filler filler) => filler switch
    {
        Filler.SolventPutty => DryingRange.Hours(4, 24), // by depth
        Filler.WaterFiller => DryingRange.Hours(1, 4),
        _ => DryingRange.Hours(12, 24),
    };

    public static Carrier CarrierOf(Filler filler) => filler switch
    {
        Filler.SolventPutty => Carrier.Solvent,
        Filler.WaterFiller => Carrier.Water,
        _ => Carrier.Reaction,
    };

    public static string Spoken(Filler filler) => filler switch
    {
        Filler.SolventPutty => "solvent putty",
        Filler.WaterFiller => "water filler",
        _ => "epoxy putty",
    };

    public static IEnumerable<Caution> CautionsOf(Filler filler) => filler switch
    {
        Filler.SolventPutty => [Cautions.SolventVapour],
        Filler.EpoxyPutty => [Cautions.SkinSensitiser],
        _ => [],
    };
}
