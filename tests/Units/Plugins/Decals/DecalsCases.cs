using Pipeline.Abstractions;
using Pipeline.Plugins.Decals;
using static Pipeline.Tests.Units.Plugins.Bench;

namespace Pipeline.Tests.Units.Plugins;

/// <summary>Decals.</summary>
internal static class DecalsCases
{
    public static IReadOnlyList<VerbCase> All { get; } =
    [
        new("decal: all, count: 2", new Decal(), new Decaling(2), Figures,
            "Decal decal by Hand, 1 Thin, recoatable 8–24 h", "12 min, set up 5/3, rack"),
        new("decal: all, setter: no", new Decal(), new Decaling(Setter: false), Figures,
            "Decal decal by Hand, 1 Thin, recoatable 8–24 h", "5 min, set up 5/3, rack"),
        new("soften: all", new Soften(), new NoParticulars(), Figures, "softens decals", "1 min, rack"),
    ];
}
