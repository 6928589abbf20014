using Pipeline.Abstractions;
using Pipeline.Plugins.Weathering;
using static Pipeline.Tests.Units.Plugins.Bench;

namespace Pipeline.Tests.Units.Plugins;

/// <summary>Wear and grime.</summary>
internal static class WeatheringCases
{
    public static IReadOnlyList<VerbCase> All { get; } =
    [
        new("filter: all, with: bilge", new Filter(), new Filtering(Bilge), Figures,
            "Effect bilge by Brush, 1 Thin, Filter, recoatable 12–24 h", "2.1 min, set up 2/2, rack"),
        new("wash: all, with: bilge", new Wash(), new Washing(Bilge), Figures,
            "Effect bilge by Brush, 1 Thin, Wash, recoatable 12–24 h", "3.1 min, set up 2/5, rack"),
        new("wash: all, with: umber, pin: yes", new Wash(), new Washing(Umber, Pin: true), Figures,
            "Effect umber by Brush, 1 Thin, PinWash, recoatable 24 h – 3 d", "3.1 min, set up 2/5, rack"),
        new("wash: all, with: bilge, pin: yes, wet-in-wet: yes", new Wash(), new Washing(Bilge, Pin: true, WetInWet: true), Figures,
            "Effect bilge by Brush, 1 Thin, PinWash, wet-in-wet, recoatable 12–24 h", "3.1 min, set up 2/5, rack"),
        new("filter: all, with: bilge, wet-in-wet: yes", new Filter(), new Filtering(Bilge, WetInWet: true), Figures,
            "Effect bilge by Brush, 1 Thin, Filter, wet-in-wet, recoatable 12–24 h", "2.1 min, set up 2/2, rack"),
        new("panel-line: all, with: bilge, wet-in-wet: yes", new PanelLine(), new PanelLining(Bilge, WetInWet: true), Figures,
            "Effect bilge by Brush, 1 Thin, PanelLine, wet-in-wet, recoatable 12–24 h", "2.6 min, set up 2/2, rack"),
        new("wash: all, with: yellow, stains: yes (water)", new Wash(), new Washing(Yellow, Stains: true), Figures,
            "Effect yellow by Brush, 1 Thin, Wash, stains, recoatable 45–60 min", "3.1 min, set up 2/5, rack"),
        new("panel-line: all, with: bilge", new PanelLine(), new PanelLining(Bilge), Figures,
            "Effect bilge by Brush, 1 Thin, PanelLine, recoatable 12–24 h", "2.6 min, set up 2/2, rack"),
        new("sponge: all, with: yellow", new SpongeChips(), new Sponging(Yellow), Figures,
            "Colour yellow by Sponge, 1 Thin, Sponge, recoatable 15–30 min", "2.1 min, set up 2/2, rack"),
        new("streak: all, with: umber, wet-in-wet: yes", new Streak(), new Streaking(Umber, true), Figures,
            "Effect umber by Brush, 1 Thin, Streak, wet-in-wet, recoatable 24 h – 3 d", "3 min, set up 2/2, rack"),
        new("clean-back: all, with: white spirit", new CleanBack(), new CleaningBack(Liquid.WhiteSpirit), Figures,
            "cleans back with white spirit (Spirit)", "2.1 min, set up 1/2"),
        new("chipping-medium: all, with: clear", new ChippingMedium(), new ChippingGround(Clear), Figures,
            "Effect clear by Airbrush, 1 Thin, ChippingMedium, recoatable 30–60 min", "1.6 min, set up 3/0, airbrush with clear, rack"),
        new("chip: all", new Chip(), new NoParticulars(), Figures,
            "cleans back with water (Water), the ChippingMedium", "2.1 min, set up 1/2"),
    ];
}
