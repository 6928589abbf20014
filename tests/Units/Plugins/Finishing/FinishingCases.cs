using Pipeline.Abstractions;
using Pipeline.Plugins.Finishing;
using static Pipeline.Tests.Units.Plugins.Bench;

namespace Pipeline.Tests.Units.Plugins;

/// <summary>Waiting, mending, writing down.</summary>
internal static class FinishingCases
{
    public static IReadOnlyList<VerbCase> All { get; } =
    [
        new("cure: all", new Cure(), new Curing(), Figures, "awaits Cured", "0 min"),
        new("cure: all, to: mask-safe, heat: 40 °C", new Cure(), new Curing(DryingState.MaskSafe, new Temperature(40)), Figures,
            "awaits MaskSafe, at 40 °C", "0 min"),
        new("wait: all, for: 24 h", new Wait(), new Waiting(Drying.Hours(24)), Figures, "rests 24 h", "0 min, alone 24 h"),
        new("photograph: all", new Photograph(), new NoParticulars(), Figures, "handles", "2.9 min, set up 10/5"),
        new("record: all, mixes: 3", new WriteDown(), new RecipeCard(3), Figures, "nothing", "15 min together"),
        new("touch-up: all, with: yellow", new TouchUp(), new TouchingUp(Yellow), Figures,
            "Colour yellow by Brush, 1 Thin, recoatable 15–30 min", "3 min, set up 2/2, rack"),
        new("test: all, with: amber", new TestMix(), new Testing(Amber), Figures, "nothing", "7.5 min together, alone 30 min"),
    ];
}
