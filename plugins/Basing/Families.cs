using Pipeline.Abstractions;
using static Pipeline.Abstractions.DryingRange;

namespace Pipeline.Plugins.Basing;

/// <summary>What is laid on bases, is no paint and dries all the same.</summary>
public sealed class Families : Catalogue<Family>
{
    /// <inheritdoc/>
    public override IEnumerable<Family> Entries => [TexturePaste, PigmentFixer];

    /// <summary>Paste, or sand in white glue: a thin smear takes 2–4 h, a thick bed 12–24 h. Painted sooner, its skin cracks.</summary>
    public static Family TexturePaste { get; } = new()
    {
        Name = "texture paste",
        AlsoCalled = ["PVA", "basing paste"],
        Carrier = Carrier.Water,
        Thin = new(
            TouchDry: Hours(1, 2), Recoatable: Hours(2, 4), Handleable: Hours(2, 4),
            MaskSafe: Hours(12, 24), WashSafe: Hours(12, 24), Cured: Hours(12, 24)),
        Heavy = new(
            TouchDry: Hours(2, 4), Recoatable: Hours(12, 24), Handleable: Hours(12, 24),
            MaskSafe: Hours(24, 48), WashSafe: Hours(24, 48), Cured: Hours(24, 48)),
        OpenTime = new Drying(15),
        Coldest = new(8),
        Warmest = new(30),
        Dampest = new(0.8),
        Thinners = ["water"],
        Cleaners = ["water"],
        Source = "common practice",
    };

    /// <summary>White spirit or thin acrylic resin flowed into pigment; nothing goes over it for 1–4 h.</summary>
    public static Family PigmentFixer { get; } = new()
    {
        Name = "pigment fixer",
        Carrier = Carrier.Spirit,
        Thin = FixerTable,
        Heavy = FixerTable,
        // pigment is worked in any room
        Coldest = null,
        Warmest = null,
        Dampest = new(0.8),
        Source = "common practice",
    };

    /// <summary>For what is dry as it lies: loose pigment.</summary>
    internal static DryingTable AtOnce { get; } = new(
        TouchDry: default(DryingRange), Recoatable: default(DryingRange), Handleable: default(DryingRange),
        MaskSafe: default(DryingRange), WashSafe: default(DryingRange), Cured: default(DryingRange));

    /// <summary>A family as it holds for the batch.</summary>
    internal static Family For(Job job, Family family) => job.Tables.Family(family.Name) ?? family;

    private static DryingTable FixerTable => new(
        TouchDry: Hours(1, 4), Recoatable: Hours(1, 4), Handleable: Hours(1, 4),
        MaskSafe: Hours(1, 4), WashSafe: Hours(1, 4), Cured: Hours(1, 4));
}
