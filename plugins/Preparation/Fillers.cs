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

/// <summary>What fillers are called in the table of setting times, and their cautions.</summary>
internal static class Fillers
{
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
