using Pipeline.Abstractions;
using Pipeline.Plugins.Coats;
using static Pipeline.Tests.Units.Plugins.Bench;

namespace Pipeline.Tests.Units.Plugins;

/// <summary>Colour and what lies under it.</summary>
internal static class CoatsCases
{
    public static IReadOnlyList<VerbCase> All { get; } =
    [
        new("undercoat: all, with: slate, by: airbrush", new Undercoat(), new Undercoating(Slate, Method.Airbrush), Figures,
            "Undercoat slate by Airbrush, 1 Thin, recoatable 10–20 min", "1.6 min, set up 3/0, airbrush with slate, rack"),
        new("undercoat: all, with: slate, by: brush", new Undercoat(), new Undercoating(Slate, Method.Brush), Figures,
            "Undercoat slate by Brush, 1 Heavy, recoatable 30–60 min", "8 min, set up 2/2, rack"),
        new("undercoat: all, with: slate, by: aerosol", new Undercoat(), new Undercoating(Slate, Method.Aerosol), Figures,
            "Undercoat slate by Aerosol, 1 Heavy, recoatable 30–60 min", "0.8 min, set up 3/2, rack"),
        new("pre-shade: all, with: slate", new PreShade(), new PreShading(Slate), Figures,
            "Colour slate by Airbrush, 1 Thin, PreShade, recoatable 10–20 min", "1.4 min, set up 3/0, airbrush with slate, rack"),
        new("coat: all, with: yellow, by: airbrush, coats: 2, overspray: rim",
            new Coat(), new Coating(Yellow, Method.Airbrush, 2, Overspray: Only("rim")), Figures,
            "Colour yellow by Airbrush, 2 Thin, recoatable 15–30 min, overspray rim",
            "2 min, 2 passes, set up 3/0, airbrush with yellow, rack"),
        new("coat: all, with: brass, by: airbrush, body: mist", new Coat(), new Coating(Brass, Method.Airbrush, Body: Body.Mist), Figures,
            "Colour brass by Airbrush, 1 Mist, recoatable 10–15 min", "1.4 min, set up 3/0, airbrush with brass, rack"),
        new("coat: all, with: yellow, by: brush", new Coat(), new Coating(Yellow, Method.Brush), Figures,
            "Colour yellow by Brush, 1 Heavy, recoatable 20–60 min", "8 min, set up 2/2, rack"),
        new("coat: all, with: umber, by: brush, coats: 2, wet-in-wet: yes",
            new Coat(), new Coating(Umber, Method.Brush, 2, WetInWet: true), Figures,
            "Colour umber by Brush, 2 Heavy, wet-in-wet, recoatable 3–7 d", "16 min, set up 2/2, rack"),
        new("coat: all, with: bilge, by: brush, coats: 2 (the second within the hour)",
            new Coat(), new Coating(Bilge, Method.Brush, 2), Figures,
            "Colour bilge by Brush, 2 Heavy, recoatable 24 h – 3 d", "16 min, set up 2/2, rack"),
        new("clear-colour: all, with: amber, by: airbrush, coats: 3",
            new ClearColour(), new ClearColouring(Amber, Method.Airbrush, 3), Figures,
            "Colour amber by Airbrush, 3 Thin, ClearColour, recoatable 10–20 min",
            "0.7 min, 3 passes, set up 3/0, airbrush with amber, rack"),
        new("layer: all, with: yellow", new Layering(), new Layered(Yellow), Figures,
            "Colour yellow by Brush, 1 Heavy, Layering, recoatable 20–60 min", "10 min, set up 2/2, rack"),
        new("glaze: all, with: yellow", new Glaze(), new Glazing(Yellow), Figures,
            "Colour yellow by Brush, 1 Thin, Glaze, recoatable 15–30 min", "5.6 min, set up 2/2, rack"),
        new("dry-brush: all, with: yellow", new DryBrush(), new DryBrushing(Yellow), Figures,
            "Colour yellow by Brush, 1 Mist, DryBrush, recoatable 15–30 min", "4 min, set up 2/2, rack"),
        new("stain: all, with: shade", new Staining(), new Stained(Shade), Figures,
            "Colour shade by Brush, 1 Heavy, Stain, recoatable 60 min – 2 h", "4 min, set up 2/2, rack"),
    ];
}
