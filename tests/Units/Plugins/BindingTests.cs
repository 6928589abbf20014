using Pipeline.Abstractions;
using Pipeline.Engine;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Plugins;

/// <summary>Workflow files bound with the verbs and tables of the house.</summary>
public sealed class BindingTests
{
    private static readonly Trade House = TradeJoining.TradeOf(AllPlugins.Assemblies);

    [Fact]
    public void A_route_reads_as_a_painter_would_tell_it()
    {
        var batch = Bound("crew.yaml", """
            batch: Tidewater salvage crew
            due: 2026-12-12 18:00

            bench:
              zone: Europe/Lisbon
              sittings:
                - { days: mon-fri, from: 19:00, to: 22:00 }
                - { days: sat, from: 10:00, to: 17:00 }
              away: [2026-12-08]
              painters: 1
              tools: { airbrush: 1, drying rack: 24 }
              climate: { air: 19 °C, humidity: 55 % }

            paints:
              hull black:   { family: acrylic lacquer, sheen: gloss, colour: "#0c0d10", stock: 40 mL }
              bright ground: { family: alcohol metallic, sheen: gloss, metallic: yes }
              clear straw:  { family: acrylic lacquer, sheen: gloss, clear: true, colour: "#e0b040" }
              clear rust:   { family: acrylic lacquer, sheen: gloss, clear: true }

            mixes:
              old brass:
                parts: { clear straw: 2, clear rust: 1 }
                thinner: { with: levelling thinner, share: 40 %, of: mix }

            schemes:
              brass ground:
                areas: [metal]
                route:
                  - undercoat: metal
                    with: hull black
                    by: airbrush
                  - coat: metal
                    with: bright ground
                    by: airbrush
                    coats: 2

            kits:
              - kit: Salvage divers
                models:
                  - model: Heavy diver
                    count: 4
                    material: resin
                    areas: { suit: 30 cm², helmet: 6 cm², glass: 1 cm², hoses: 4 cm², stand: 8 cm² }
                    route:
                      - clean: all
                      - trim: all
                      - glue: all
                      - follow: brass ground
                        metal: all
                      - mask: [glass, hoses]
                        using: liquid mask
                        as: fittings
                      - coat: suit
                        with: old brass
                        by: airbrush
                      - unmask: fittings
            """);
        batch.Routes.Single().Steps.Select(step => (step.Verb, Told.Deeds(new Intent(step.Deeds, step.Work)))).Should().Equal(
            ("clean", "Washed, with soapy water, settles 60 min – 2 h (Water)"),
            ("trim", "Trimmed"),
            ("glue", "Glued, with superglue, settles 5 min (Reaction)"),
            ("undercoat", "Undercoat hull black by Airbrush, 1 Thin, recoatable 10–20 min"),
            ("coat", "Colour bright ground by Airbrush, 2 Thin, recoatable 10–15 min"),
            ("mask", "mask fittings of liquid mask"),
            ("coat", "Colour old brass by Airbrush, 1 Thin, recoatable 10–20 min"),
            ("unmask", "takes off fittings"));
    }

    [Theory]
    [InlineData("join: [body, arm]\nusing: foam-safe superglue\nfaces: bare\npinned: yes", "joins body, arm, FoamSafeSuperglue settles 5 min (Reaction), Bare faces, pinned")]
    [InlineData("fill: body\nusing: water filler", "Filled, with water filler, settles 60 min – 4 h (Water), sandable 60 min – 4 h")]
    [InlineData("clean: all\nwith: isopropyl\nultrasonic: yes", "Washed, with isopropyl, settles 60 min – 2 h (Alcohol), ultrasonic")]
    [InlineData("strip: all\nwith: alkaline cleaner\nsoak: 4 h", "strips with alkaline cleaner (Water), damp 60 min – 2 h")]
    [InlineData("clean-back: body\nwith: white spirit", "cleans back with white spirit (Spirit)")]
    [InlineData("pigment: body\nwith: rust crust\nfix: acrylic resin", "Powder rust crust by Brush, 1 Thin, recoatable 60 min – 4 h")]
    [InlineData("cure: all\nto: mask-safe\nheat: 40 °C", "awaits MaskSafe, at 40 °C")]
    [InlineData("wait: all\nfor: 24 h", "rests 24 h")]
    [InlineData("coat: body\nwith: slate\nby: airbrush\nbody: mist\noverspray: all", "Colour slate by Airbrush, 1 Mist, recoatable 10–20 min, overspray body, arm")]
    [InlineData("texture: body\nwith: fine sand\nbody: thin", "Texture fine sand by Hand, 1 Thin, recoatable 2–4 h")]
    public void Particulars_are_written_in_words(string step, string deeds)
    {
        var batch = Bound("box.yaml", $$"""
            batch: Box
            bench: { zone: Europe/Lisbon, sittings: [{ days: mon-fri, from: 19:00, to: 22:00 }] }
            paints: { slate: { family: acrylic lacquer } }
            kits:
              - kit: Box
                models:
                  - model: Piece
                    count: 1
                    material: resin
                    parts:
                      body: { areas: { body: 20 cm² } }
                      arm: { areas: { arm: 4 cm² } }
                    route:
                      - {{step.Replace("\n", "\n" + new string(' ', 12), StringComparison.Ordinal)}}
            """);
        var only = batch.Routes.Single().Steps.Single();
        Told.Deeds(new Intent(only.Deeds, only.Work)).Should().Be(deeds);
    }

    [Theory]
    [InlineData("first.yaml")]
    [InlineData("tidewater.yaml")]
    [InlineData("harbour-fair.yaml")]
    public void The_demo_files_bind(string file) =>
        Bound(file, File.ReadAllText(Path.Combine(OwnPlugin.Repository, "workflows", file))).Routes.Should().NotBeEmpty();

    private static Batch Bound(string file, string text)
    {
        var read = Reader.Read(new SourceText(file, text));
        read.Findings.Select(finding => finding.Message).Should().BeEmpty();
        var bound = Binder.Bind([read.Tree!], House);
        bound.Findings.Select(finding => $"{finding.Place}: {finding.Message}").Should().BeEmpty();
        return bound.Batch!;
    }
}
