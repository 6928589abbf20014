using Pipeline.Abstractions;

namespace Pipeline.Plugins;

/// <summary>
/// Which worry a coat over another raises about time. One cause gives one finding, so each pair of layers has one concern and the
/// rule of that concern speaks.
/// </summary>
internal enum Concern
{
    /// <summary>None: worked wet-in-wet, or one thin effect into another.</summary>
    None,

    /// <summary>An ordinary coat over another: it must be recoatable.</summary>
    Recoat,

    /// <summary>An enamel or oil effect, or an enamel coat, on a coat that must bear its thinner.</summary>
    ThinnerOnYoung,

    /// <summary>Anything laid over a thin enamel or oil effect, or a fixer: its solvent must be gone.</summary>
    SealOverEffect,

    /// <summary>A waterborne coat over an enamel or oil coat, or enamel over oil: it must have cured.</summary>
    FatOverLean,

    /// <summary>Strong solvent or alcohol over an enamel or oil coat: it must have cured.</summary>
    HotOverSoft,

    /// <summary>A decal on a ground that must bear water and softener.</summary>
    DecalOnYoung,

    /// <summary>Anything over a decal, which must be dry.</summary>
    OverDecal,

    /// <summary>Anything over paste or sand, which must be dry.</summary>
    OverTexture,
}

/// <summary>Finds the concern of a pair of layers.</summary>
internal static class Concerns
{
    /// <summary>What a new layer over the top of a surface has to mind.</summary>
    public static Concern Of(Layer over, Layer top)
    {
        if (over.IsWetInWet)
            return Concern.None;
        if (top.Role == LayerRole.Decal)
            return over.Role == LayerRole.Decal ? Concern.None : Concern.OverDecal;
        if (top.Role == LayerRole.Texture)
            return over.Role == LayerRole.Texture ? Concern.None : Concern.OverTexture;
        if (top.IsSpiritEffect() || (top.Role == LayerRole.Powder && top.Family is not null))
            return over.IsSpiritEffect() || over.Role == LayerRole.Powder ? Concern.None : Concern.SealOverEffect;
        if (top.Role == LayerRole.Powder || over.Role is LayerRole.Powder or LayerRole.Texture)
            return over.Role == LayerRole.Powder || top.Role == LayerRole.Powder ? Concern.None : Concern.Recoat;
        if (over.Role == LayerRole.Decal)
            return Concern.DecalOnYoung;
        if (over.IsSpirit() && !top.IsSpirit())
            return over.IsSpiritEffect() || IsEnamel(over) || top.IsWaterborne() ? Concern.ThinnerOnYoung : Concern.Recoat;
        if (top.IsSpirit() && (over.IsWaterborne() || (IsEnamel(over) && !over.IsSpiritEffect() && !IsEnamel(top))))
            return Concern.FatOverLean;
        if (top.IsSpirit() && (over.IsHot() || over.IsAlcohol()))
            return Concern.HotOverSoft;
        return Concern.Recoat;
    }

    /// <summary>Enamels have a recoat trap; oils do not.</summary>
    public static bool IsEnamel(Layer layer) => layer.IsSpirit() && layer.Family?.RecoatOpen is not null;
}
