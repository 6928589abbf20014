using Pipeline.Abstractions;

namespace Pipeline.Plugins;

/// <summary>
/// Which worry a coat over another raises about time. One cause gives one finding, so each pair of layers has one concern and the
/// rule of that concern speaks.
/// </summary>
internal enum Concern
{
    /// <summary>None: worked wet-in-wet, or one thin effect over another, which <c>effect-blooms</c> judges.</summary>
    None,

    /// <summary>An ordinary coat over another: it must be recoatable.</summary>
    Recoat,

    /// <summary>An enamel or oil effect, or an enamel coat, on a coat that must bear its thinner.</summary>
    ThinnerOnYoung,

    /// <summary>Anything laid over a thin enamel or oil effect, or a fixer: its solvent must be gone.</summary>
    SealOverEffect,

    /// <summary>A coat that must not go on one that has not cured: waterborne over enamel or oil, enamel over oil.</summary>
    FatOverLean,

    /// <summary>The same where strong solvent or alcohol is the trouble.</summary>
    HotOverSoft,

    /// <summary>A decal on a ground that must bear water and softener.</summary>
    DecalOnYoung,

    /// <summary>Anything over a decal, which must be dry.</summary>
    OverDecal,

    /// <summary>Anything over paste or sand, which must be dry.</summary>
    OverTexture,
}

/// <summary>Finds the concern of a pair of layers, from what the compatibility table says of their families.</summary>
internal static class Concerns
{
    /// <summary>The row of the compatibility table for a new coat over a layer; null where the two are no paint or nothing is known.</summary>
    public static CoatOver? Pair(this Moment moment, Layer over, Layer top) =>
        over is { Family: { } coat } && top is { Family: { } under } && IsPaint(over) && IsPaint(top)
            ? moment.Tables.Over(coat, over.Role == LayerRole.Effect, under)
            : null;

    /// <summary>What a new layer over the top of a surface has to mind.</summary>
    public static Concern ConcernOf(this Moment moment, Layer over, Layer top)
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
            return top.Role == LayerRole.Powder ? Concern.None : Concern.Recoat;
        if (over.Role == LayerRole.Decal)
            return Concern.DecalOnYoung;
        // alcohol on what it dissolves is a matter of how wet it is laid
        if (over.IsAlcohol() && top.IsWaterborne())
            return Concern.Recoat;
        return moment.Pair(over, top) switch
        {
            { WhenDry: Bearing.Never } => over.IsHot() || over.IsAlcohol() ? Concern.HotOverSoft : Concern.FatOverLean,
            { WhenDry: Bearing.Fine or Bearing.Scuff, From: > DryingState.Recoatable } => Concern.ThinnerOnYoung,
            _ => Concern.Recoat,
        };
    }

    /// <summary>
    /// What is wrong with a pair however well the layer under it has cured: it never goes, or only over a barrier. Null if nothing is, or if
    /// the new coat is itself the barrier.
    /// </summary>
    public static Verdict? Refusal(this Moment moment, Layer over, Layer top, CoatOver pair, string area)
    {
        var pointer = new Pointer(top.Step, $"{top.Name} was laid here");
        if (pair.WhenCured == Bearing.Never)
        {
            return moment.Says(
                Level.Error, area, $"{over.Name} does not go over {top.Name} on {{areas}}, cured or not.",
                $"Lay another paint there, or take {top.Name} off first.", pointer);
        }

        if (pair.WhenCured != Bearing.Barrier || over.Role is LayerRole.Varnish or LayerRole.Sealer)
            return null;
        return moment.Says(
            Level.Warning, area, $"{over.Name} does not last on {top.Name} of {{areas}}, however well that has cured: no varnish lies between them.",
            "Lay a barrier varnish first, once it has cured.", pointer)
            .MendedBy(moment.VarnishFirst(top, Sheen.Satin));
    }

    /// <summary>Enamels have a recoat trap; oils do not.</summary>
    public static bool IsEnamel(Layer layer) => layer.IsSpirit() && layer.Family?.RecoatOpen is not null;

    private static bool IsPaint(Layer layer) => layer.Role is not (LayerRole.Decal or LayerRole.Texture or LayerRole.Powder or LayerRole.Scatter);
}
