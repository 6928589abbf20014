using Pipeline.Abstractions;
using static Pipeline.Abstractions.DryingRange;

namespace Pipeline.Plugins.Decals;

/// <summary>What dries with a decal: the water and setter under its film.</summary>
public sealed class Families : Catalogue<Family>
{
    private static DryingTable Table { get; } = new(
        TouchDry: Minutes(10, 20), Recoatable: Hours(8, 24), Handleable: Hours(8, 24),
        MaskSafe: Hours(8, 24), WashSafe: Hours(8, 24), Cured: Hours(8, 24));

    /// <inheritdoc/>
    public override IEnumerable<Family> Entries => [DecalFilm];

    /// <summary>
    /// A decal. After 10–20 min it has seated and takes softener; it is dry 8–24 h after it was last wetted.
    /// </summary>
    public static Family DecalFilm { get; } = new()
    {
        Name = "decal film",
        Carrier = Carrier.Water,
        Thin = Table,
        Heavy = Table,
        Source = "common practice",
    };

    /// <summary>The family as it holds for the batch.</summary>
    internal static Family For(Job job) => job.Tables.Family(DecalFilm.Name) ?? DecalFilm;
}
