using Pipeline.Abstractions;
using Pipeline.Plugins.Basing;
using static Pipeline.Tests.Units.Plugins.Bench;

namespace Pipeline.Tests.Units.Plugins;

/// <summary>Bases.</summary>
internal static class BasingCases
{
    public static IReadOnlyList<VerbCase> All { get; } =
    [
        new("texture: all", new Texture(), new Texturing(), Figures,
            "Texture texture paste by Hand, 1 Heavy, recoatable 12–24 h", "4.4 min, set up 3/3, rack"),
        new("texture: all, with: fine sand, body: thin", new Texture(), new Texturing("fine sand", Body.Thin), Figures,
            "Texture fine sand by Hand, 1 Thin, recoatable 2–4 h", "4.4 min, set up 3/3, rack"),
        new("scatter: all, with: reed tufts", new Scatter(), new Scattering("reed tufts"), Figures,
            "Scatter reed tufts by Hand, 1 Thin, recoatable 2–4 h", "3 min, set up 3/3, rack"),
        new("pigment: all, with: rust crust", new Pigment(), new Pigmenting("rust crust"), Figures,
            "Powder rust crust by Brush, 1 Thin, recoatable 0 min", "2.1 min, set up 3/5"),
        new("pigment: all, with: rust crust, fix: spirit", new Pigment(), new Pigmenting("rust crust", Fixer.Spirit), Figures,
            "Powder rust crust by Brush, 1 Thin, recoatable 60 min – 4 h", "2.1 min, set up 3/5, rack"),
        new("rim: all, with: yellow", new Rim(), new Rimming(Yellow), Figures,
            "Colour yellow by Brush, 1 Heavy, recoatable 20–60 min", "1.5 min, set up 2/2, rack"),
    ];
}
