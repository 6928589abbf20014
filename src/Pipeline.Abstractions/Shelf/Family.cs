namespace Pipeline.Abstractions;

/// <summary>
/// Times from laying to each drying state. A null time means the state is never reached without something else
/// (an enamel is not wash-safe without a barrier).
/// </summary>
public sealed record DryingTable(
    DryingRange? TouchDry,
    DryingRange? Recoatable,
    DryingRange? Handleable,
    DryingRange? MaskSafe,
    DryingRange? WashSafe,
    DryingRange? Cured)
{
    /// <summary>The time to a state, or null if it is not reached.</summary>
    public DryingRange? To(DryingState state) => state switch
    {
        DryingState.TouchDry => TouchDry,
        DryingState.Recoatable => Recoatable,
        DryingState.Handleable => Handleable,
        DryingState.MaskSafe => MaskSafe,
        DryingState.WashSafe => WashSafe,
        DryingState.Cured => Cured,
        _ => null,
    };

    /// <summary>The same table with one time replaced.</summary>
    public DryingTable With(DryingState state, DryingRange? time) => state switch
    {
        DryingState.TouchDry => this with { TouchDry = time },
        DryingState.Recoatable => this with { Recoatable = time },
        DryingState.Handleable => this with { Handleable = time },
        DryingState.MaskSafe => this with { MaskSafe = time },
        DryingState.WashSafe => this with { WashSafe = time },
        DryingState.Cured => this with { Cured = time },
        _ => this,
    };
}

/// <summary>A coating chemistry. Families come from plugins; a file may override their times.</summary>
public sealed record Family
{
    /// <summary>Its trade name: <c>waterborne acrylic</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Other names a file may use.</summary>
    public Sequence<string> AlsoCalled { get; init; }

    /// <summary>The family whose rows in the other tables serve for it where it has none of its own; null for the usual one of its carrier.</summary>
    public string? Like { get; init; }

    /// <summary>What leaves the film.</summary>
    public required Carrier Carrier { get; init; }

    /// <summary>Times for a thin coat, 10–20 µm dry.</summary>
    public required DryingTable Thin { get; init; }

    /// <summary>Times for a brushed or heavy coat, 20–40 µm dry.</summary>
    public required DryingTable Heavy { get; init; }

    /// <summary>Times for a very thin effect (wash, filter, streak); null if the thin ones serve.</summary>
    public DryingTable? Effect { get; init; }

    /// <summary>How long after laying it can still be recoated wet before it must dry through; null where there is no such trap (enamel: one hour).</summary>
    public Drying? RecoatOpen { get; init; }

    /// <summary>How long after laying it can still be worked wet-in-wet; null where nobody does.</summary>
    public Drying? OpenTime { get; init; }

    /// <summary>How long a mix of it stays usable in the cup; null if nothing needs saying.</summary>
    public Drying? PotLife { get; init; }

    /// <summary>Coldest bench at which it forms a film; null for any.</summary>
    public Temperature? Coldest { get; init; } = new(10);

    /// <summary>Warmest bench at which it can be laid; null for any.</summary>
    public Temperature? Warmest { get; init; } = new(30);

    /// <summary>Dampest air in which it can be laid.</summary>
    public Share Dampest { get; init; } = new(0.8);

    /// <summary>Dampest air in which it can be sprayed matt, where that is drier; null if <see cref="Dampest"/> serves.</summary>
    public Share? DampestSprayedMatt { get; init; }

    /// <summary>Driest air in which it can be sprayed before it dries on the tip; null if nothing needs saying.</summary>
    public Share? DriestSprayed { get; init; }

    /// <summary>Warmest bench at which it can be sprayed before it dries on the tip; null if nothing needs saying.</summary>
    public Temperature? WarmestSprayed { get; init; }

    /// <summary>Its hardener holds isocyanate.</summary>
    public bool HasIsocyanate { get; init; }

    /// <summary>True for clear varnishes, which part a soft layer from a hot one.</summary>
    public bool IsVarnish { get; init; }

    /// <summary>What it is usually thinned with.</summary>
    public Sequence<string> Thinners { get; init; }

    /// <summary>What usually cleans the tools.</summary>
    public Sequence<string> Cleaners { get; init; }

    /// <summary>Where the figures come from; <c>common practice</c> where nobody published them.</summary>
    public required string Source { get; init; }
}

/// <summary>What a piece is made of. Materials come from plugins.</summary>
public sealed record Material
{
    /// <summary>Its trade name: <c>resin</c>, <c>fibreboard</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Other names a file may use.</summary>
    public Sequence<string> AlsoCalled { get; init; }

    /// <summary>Drinks paint until it is sealed.</summary>
    public bool IsPorous { get; init; }

    /// <summary>Carries release agent or grease and must be washed before paint.</summary>
    public bool NeedsWashing { get; init; }

    /// <summary>Must be post-cured in ultraviolet light before paint.</summary>
    public bool NeedsPostCure { get; init; }

    /// <summary>How grave colour without an undercoat is; null if it does not matter.</summary>
    public Level? BareColour { get; init; }

    /// <summary>Melts under hot solvents when bare.</summary>
    public bool SoftensInSolvent { get; init; }

    /// <summary>Dissolves under hot solvents and propellants when bare (expanded foam).</summary>
    public bool DissolvesInSolvent { get; init; }

    /// <summary>Warps in air warmer than this; null if warmth does not matter.</summary>
    public Temperature? WarpsAbove { get; init; }

    /// <summary>Gives off dust that harms when sanded or cut dry.</summary>
    public bool HarmfulDust { get; init; }

    /// <summary>Where the facts come from.</summary>
    public required string Source { get; init; }
}

/// <summary>What kind of thing a mask is.</summary>
public enum MaskKind
{
    /// <summary>Adhesive tape.</summary>
    Tape,

    /// <summary>Adhesive cut film.</summary>
    Film,

    /// <summary>Liquid that dries to a skin.</summary>
    Liquid,

    /// <summary>Putty.</summary>
    Putty,

    /// <summary>Foam or paper, not stuck down.</summary>
    Cover,
}

/// <summary>A material to mask with. Mask materials come from plugins.</summary>
public sealed record MaskMaterial
{
    /// <summary>Its trade name: <c>low-tack tape</c>, <c>liquid mask</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Other names a file may use.</summary>
    public Sequence<string> AlsoCalled { get; init; }

    /// <summary>What kind of thing it is.</summary>
    public required MaskKind Kind { get; init; }

    /// <summary>The drying state it asks of the layer under it.</summary>
    public required DryingState Needs { get; init; }

    /// <summary>Sticks hard enough to lift weak layers.</summary>
    public bool IsStrongTack { get; init; }

    /// <summary>Beyond this time on, it leaves residue or lifts paint; null for what is not stuck down and may lie as long as it likes.</summary>
    public required Drying? TimeOn { get; init; }

    /// <summary>The hard limit, or null.</summary>
    public Drying? HardLimit { get; init; }

    /// <summary>How long it must set before paint (a liquid mask clears in 20–40 min).</summary>
    public DryingRange? Sets { get; init; }

    /// <summary>Where the figures come from.</summary>
    public required string Source { get; init; }

    /// <summary>True if the file, not the trade, gives the figures.</summary>
    public bool IsFromFile => Source == Tables.TheFile;
}

/// <summary>
/// Rows of a table that a plugin adds to what the program knows: families, materials, mask materials, and the rows of compatibility,
/// re-wetting, clean-outs, thinners, setting times and figures.
/// </summary>
/// <typeparam name="T">What a row is.</typeparam>
public abstract class Catalogue<T>
{
    /// <summary>The rows.</summary>
    public abstract IEnumerable<T> Entries { get; }
}
