using Pipeline.Abstractions;
using Pipeline.Plugins.Basing;
using Pipeline.Plugins.Coats;
using Pipeline.Plugins.Decals;
using Pipeline.Plugins.Finishing;
using Pipeline.Plugins.Masking;
using Pipeline.Plugins.Preparing;
using Pipeline.Plugins.Varnish;
using Pipeline.Plugins.Weathering;
using static Pipeline.Tests.Units.Plugins.Bench;
using Families = Pipeline.Plugins.Coats.Families;

namespace Pipeline.Tests.Units.Plugins;

/// <summary>One step as a painter would write it, and what it must mean.</summary>
internal sealed record VerbCase(string Says, Verb Verb, object Particulars, Job Job, string Deeds, string Work)
{
    public Intent Intend() => Verb.Intend(Job, Particulars);

    public override string ToString() => Says;
}

/// <summary>Every verb at work. Six resin figures of 30 cm² unless the case says otherwise.</summary>
internal static class VerbCases
{
    private static readonly Paint Slate = Pot("slate", Families.AcrylicLacquer);
    private static readonly Paint Yellow = Pot("yellow", Families.WaterborneAcrylic);
    private static readonly Paint Brass = Pot("brass", Families.AlcoholMetallic) with { IsMetallic = true };
    private static readonly Paint Amber = Pot("amber", Families.AcrylicLacquer) with { IsClear = true };
    private static readonly Paint Bilge = Pot("bilge", Families.Enamel);
    private static readonly Paint Umber = Pot("umber", Families.Oil);
    private static readonly Paint Shade = Pot("shade", Families.Stain);
    private static readonly Paint Sealer = Pot("sealer", Families.CelluloseLacquer);
    private static readonly Paint Clear = Pot("clear", Families.WaterborneVarnish);

    private static readonly Job Figures = Six("resin");
    private static readonly Job Boards = Six("fibreboard");

    public static IReadOnlyList<VerbCase> All { get; } =
    [
        // preparation
        new("clean: all", new Clean(), new Cleaning(), Figures,
            "Washed, with soapy water, settles 60 min – 2 h (Water)", "1.4 min, set up 5/3"),
        new("clean: all, in: isopropyl", new Clean(), new Cleaning(Liquid.Isopropyl), Figures,
            "Washed, with isopropyl, settles 60 min – 2 h (Alcohol)", "1.4 min, set up 5/3"),
        new("clean: all, ultrasonic: yes", new Clean(), new Cleaning(Ultrasonic: true), Figures,
            "Washed, with soapy water, settles 60 min – 2 h (Water), ultrasonic", "4.2 min together, set up 5/5, alone 5 min"),
        new("clean: all (fibreboard is brushed off, not washed)", new Clean(), new Cleaning(), Boards,
            "Washed", "1.4 min, set up 5/3"),
        new("clean: all, in: water (fibreboard)", new Clean(), new Cleaning(Liquid.Water), Boards,
            "Washed, with water, settles 12–24 h (Water)", "1.4 min, set up 5/3"),
        new("post-cure: all", new PostCure(), new NoParticulars(), Six("printed resin"),
            "PostCured", "6 min together, set up 5/5, alone 90 min"),
        new("cut: all", new Cut(), new NoParticulars(), Figures, "Cut", "2.7 min, set up 2/2"),
        new("trim: all", new Trim(), new Trimming(), Figures, "Trimmed", "7.9 min, set up 2/5"),
        new("trim: all, wet: yes", new Trim(), new Trimming(Wet: true), Figures, "Trimmed, wet", "7.9 min, set up 2/5"),
        new("trim: all (laser-cut board)", new Trim(), new Trimming(), Boards, "Trimmed", "1.6 min, set up 2/5"),
        new("drill: all, holes: 3, wet: no", new Drill(), new Drilling(3, false), Figures, "Drilled, dry", "5.4 min, set up 2/2"),
        new("pin: all, pins: 2", new Pin(), new Pinning(2), Figures, "Drilled; Pinned, pinned", "8.2 min, set up 2/2"),
        new("dry-fit: all", new DryFit(), new NoParticulars(), Figures, "DryFitted", "2.7 min"),
        new("fill: all", new Fill(), new Filling(), Figures,
            "Filled, with epoxy putty, settles 12–24 h (Reaction), sandable 12–24 h", "2.5 min, set up 3/2"),
        new("fill: all, using: solvent putty", new Fill(), new Filling(Filler.SolventPutty), Figures,
            "Filled, with solvent putty, settles 4–24 h (Solvent), sandable 4–24 h", "2.5 min, set up 3/2"),
        new("fill: all, using: water filler", new Fill(), new Filling(Filler.WaterFiller), Figures,
            "Filled, with water filler, settles 60 min – 4 h (Water), sandable 60 min – 4 h", "2.5 min, set up 3/2"),
        new("fill: all, cures: 6 h", new Fill(), new Filling(Cures: DryingRange.Hours(6, 6)), Figures,
            "Filled, with epoxy putty, settles 6 h (Reaction), sandable 6 h", "2.5 min, set up 3/2"),
        new("sand: all", new Sand(), new Sanding(), Figures, "Sanded", "1.4 min, set up 1/3"),
        new("sand: all, wet: yes", new Sand(), new Sanding(true), Figures,
            "Sanded, settles 60 min – 2 h (Water), wet", "1.4 min, set up 1/3"),
        new("sand: all, wet: yes (fibreboard)", new Sand(), new Sanding(true), Boards,
            "Sanded, settles 12–24 h (Water), wet", "1.4 min, set up 1/3"),
        new("sand: all, wet: no", new Sand(), new Sanding(false), Boards, "Sanded, dry", "1.4 min, set up 1/3"),
        new("glue: all", new GlueUp(), new Gluing(), Figures,
            "Glued, with superglue, settles 5 min (Reaction)", "4.4 min, set up 2/3"),
        new("glue: all (styrene)", new GlueUp(), new Gluing(), Six("styrene"),
            "Glued, with styrene cement, settles 60 min – 2 h (Solvent), sandable 24 h", "4.4 min, set up 2/3"),
        new("glue: all (fibreboard)", new GlueUp(), new Gluing(), Boards,
            "Glued, with PVA, settles 2–4 h (Water)", "4.4 min, set up 2/3"),
        new("glue: all, using: foam-safe superglue", new GlueUp(), new Gluing(Glue.FoamSafeSuperglue), Six("foam"),
            "Glued, with foam-safe superglue, settles 5 min (Reaction)", "4.4 min, set up 2/3"),
        new("glue: all, using: epoxy, faces: bare, pinned: yes", new GlueUp(), new Gluing(Glue.Epoxy, JointFaces.Bare, true), Figures,
            "Glued, with epoxy, settles 3–6 h (Reaction), sandable 12–24 h, Bare faces, pinned", "4.4 min, set up 2/3"),
        new("join: [body, arm], using: epoxy, hides: back",
            new Join(), new Joining(Glue.Epoxy, Only("back"), JointFaces.Painted), Figures.Parts("body", "arm"),
            "joins body, arm, hides back, Epoxy settles 3–6 h (Reaction), Painted faces", "3.4 min, set up 2/3"),
        new("join: [tower, jib, cabin]", new Join(), new Joining(), Boards.Parts("tower", "jib", "cabin"),
            "joins tower, jib, cabin, Pva settles 2–4 h (Water)", "6.8 min, set up 2/3"),
        new("seal: all, with: sealer, coats: 2", new Seal(), new Sealing(Sealer, Coats: 2), Boards,
            "Sealer sealer by Brush, 2 Heavy, recoatable 30–60 min", "2.6 min, set up 2/5, alone 47.5 min, rack"),
        new("strip: all, with: alkaline cleaner", new StripOff(), new Stripping(Liquid.AlkalineCleaner), Figures,
            "strips with alkaline cleaner (Water), damp 60 min – 2 h", "42 min together, set up 5/10, alone 12 h"),
        new("strip: all, with: isopropyl, soak: 1 h, ultrasonic: yes",
            new StripOff(), new Stripping(Liquid.Isopropyl, Drying.Hours(1), true), Figures,
            "strips with isopropyl (Alcohol), ultrasonic, damp 60 min – 2 h", "42 min together, set up 5/10, alone 60 min"),
        new("strip: all (fibreboard is sanded)", new StripOff(), new Stripping(), Boards,
            "strips with sandpaper (None)", "7 min, set up 5/10"),

        // coats
        new("undercoat: all, with: slate, by: airbrush", new Undercoat(), new Undercoating(Slate, Method.Airbrush), Figures,
            "Undercoat slate by Airbrush, 1 Thin, recoatable 10–20 min", "1.6 min, set up 3/0, airbrush with slate, rack"),
        new("undercoat: all, with: slate, by: brush", new Undercoat(), new Undercoating(Slate, Method.Brush), Figures,
            "Undercoat slate by Brush, 1 Heavy, recoatable 30–60 min", "8 min, set up 2/2, rack"),
        new("undercoat: all, with: slate, by: aerosol", new Undercoat(), new Undercoating(Slate, Method.Aerosol), Figures,
            "Undercoat slate by Aerosol, 1 Heavy, recoatable 30–60 min", "4.7 min together, set up 3/2, rack"),
        new("pre-shade: all, with: slate", new PreShade(), new PreShading(Slate), Figures,
            "Colour slate by Airbrush, 1 Thin, PreShade, recoatable 10–20 min", "1.4 min, set up 3/0, airbrush with slate, rack"),
        new("coat: all, with: yellow, by: airbrush, coats: 2, overspray: rim",
            new Coat(), new Coating(Yellow, Method.Airbrush, 2, Overspray: Only("rim")), Figures,
            "Colour yellow by Airbrush, 2 Thin, recoatable 15–30 min, overspray rim",
            "4 min, set up 3/0, alone 17 min, airbrush with yellow, rack"),
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
            "2 min, set up 3/0, alone 29.2 min, airbrush with amber, rack"),
        new("layer: all, with: yellow", new Layering(), new Layered(Yellow), Figures,
            "Colour yellow by Brush, 1 Heavy, Layering, recoatable 20–60 min", "10 min, set up 2/2, rack"),
        new("glaze: all, with: yellow", new Glaze(), new Glazing(Yellow), Figures,
            "Colour yellow by Brush, 1 Thin, Glaze, recoatable 15–30 min", "5.6 min, set up 2/2, rack"),
        new("dry-brush: all, with: yellow", new DryBrush(), new DryBrushing(Yellow), Figures,
            "Colour yellow by Brush, 1 Mist, DryBrush, recoatable 15–30 min", "4 min, set up 2/2, rack"),
        new("stain: all, with: shade", new Staining(), new Stained(Shade), Figures,
            "Colour shade by Brush, 1 Heavy, Stain, recoatable 60 min – 2 h", "4 min, set up 2/2, rack"),

        // masking
        new("mask: all, using: low-tack tape, as: bands", new Mask(), new MaskingOff(MaskOf("low-tack tape")), Figures.Named("bands"),
            "mask bands of low-tack tape", "7.6 min, set up 2/2"),
        new("mask: all, using: cut film, over: bands, as: stencil",
            new Mask(), new MaskingOff(MaskOf("cut film"), new MaskName("bands")), Figures.Named("stencil"),
            "mask stencil of cut film over bands", "6 min, set up 2/2"),
        new("mask: all, using: liquid mask, as: fittings", new Mask(), new MaskingOff(MaskOf("liquid mask")), Figures.Named("fittings"),
            "mask fittings of liquid mask", "3 min, set up 1/2"),
        new("mask: all, using: putty, as: edge", new Mask(), new MaskingOff(MaskOf("putty")), Figures.Named("edge"),
            "mask edge of putty", "2.4 min, set up 1/2"),
        new("mask: all, using: cover, as: bag", new Mask(), new MaskingOff(MaskOf("cover")), Figures.Named("bag"),
            "mask bag of cover", "1.6 min, set up 1/2"),
        new("unmask: [bands, stencil]", new Unmask(), new NoParticulars(), Figures with { Named = ["bands", "stencil"] },
            "takes off bands; takes off stencil", "2.5 min"),

        // decals
        new("decal: all, count: 2", new Decal(), new Decaling(2), Figures,
            "Decal decal by Hand, 1 Thin, recoatable 8–24 h", "12 min, set up 5/3, rack"),
        new("decal: all, setter: no", new Decal(), new Decaling(Setter: false), Figures,
            "Decal decal by Hand, 1 Thin, recoatable 8–24 h", "5 min, set up 5/3, rack"),
        new("soften: all", new Soften(), new NoParticulars(), Figures, "softens decals", "1 min, rack"),

        // weathering
        new("filter: all, with: bilge", new Filter(), new Filtering(Bilge), Figures,
            "Effect bilge by Brush, 1 Thin, Filter, recoatable 12–24 h", "2.1 min, set up 2/2, rack"),
        new("wash: all, with: bilge", new Wash(), new Washing(Bilge), Figures,
            "Effect bilge by Brush, 1 Thin, Wash, recoatable 12–24 h", "3.1 min, set up 2/5, rack"),
        new("wash: all, with: umber, pin: yes", new Wash(), new Washing(Umber, Pin: true), Figures,
            "Effect umber by Brush, 1 Thin, PinWash, recoatable 24 h – 3 d", "3.1 min, set up 2/5, rack"),
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

        // varnish
        new("varnish: all, with: clear, by: airbrush, body: mist, coats: 2, overspray: rim", new Varnish(),
            new Varnishing(Clear, Method.Airbrush, 2, Body.Mist, Only("rim")), Figures,
            "Varnish clear by Airbrush, 2 Mist, recoatable 30–60 min, overspray rim",
            "3.1 min, set up 3/0, alone 46.3 min, airbrush with clear, rack"),
        new("varnish: all, with: clear, by: brush", new Varnish(), new Varnishing(Clear, Method.Brush), Figures,
            "Varnish clear by Brush, 1 Heavy, recoatable 60 min – 2 h", "5.1 min, set up 2/2, rack"),

        // basing
        new("texture: all", new Texture(), new Texturing(), Figures,
            "Texture texture paste by Hand, 1 Heavy, recoatable 12–24 h", "4.4 min, set up 3/3, rack"),
        new("texture: all, with: fine sand, body: thin", new Texture(), new Texturing("fine sand", Body.Thin), Figures,
            "Texture fine sand by Hand, 1 Thin, recoatable 2–4 h", "4.4 min, set up 3/3, rack"),
        new("pigment: all, with: rust crust", new Pigment(), new Pigmenting("rust crust"), Figures,
            "Powder rust crust by Brush, 1 Thin, recoatable 0 min", "2.1 min, set up 3/5"),
        new("pigment: all, with: rust crust, fix: spirit", new Pigment(), new Pigmenting("rust crust", Fixer.Spirit), Figures,
            "Powder rust crust by Brush, 1 Thin, recoatable 60 min – 4 h", "2.1 min, set up 3/5, rack"),
        new("rim: all, with: yellow", new Rim(), new Rimming(Yellow), Figures,
            "Colour yellow by Brush, 1 Heavy, recoatable 20–60 min", "1.5 min, set up 2/2, rack"),

        // finishing
        new("cure: all", new Cure(), new Curing(), Figures, "awaits Cured", "0 min"),
        new("cure: all, to: mask-safe, heat: 40 °C", new Cure(), new Curing(DryingState.MaskSafe, new Temperature(40)), Figures,
            "awaits MaskSafe, at 40 °C", "0 min"),
        new("wait: all, for: 24 h", new Wait(), new Waiting(Drying.Hours(24)), Figures, "rests 24 h", "0 min, alone 24 h"),
        new("photograph: all", new Photograph(), new NoParticulars(), Figures, "handles", "2.9 min, set up 10/5"),
        new("record: all, mixes: 3", new WriteDown(), new Recording(3), Figures, "nothing", "15 min together"),
        new("touch-up: all, with: yellow", new TouchUp(), new TouchingUp(Yellow), Figures,
            "Colour yellow by Brush, 1 Thin, recoatable 15–30 min", "3 min, set up 2/2, rack"),
        new("test: all, with: amber", new TestMix(), new Testing(Amber), Figures, "nothing", "7.5 min together, alone 30 min"),
    ];
}
