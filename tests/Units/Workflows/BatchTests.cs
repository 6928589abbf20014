using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Workflows;

public class BatchTests
{
    private const string Bench = "bench: { zone: Europe/Lisbon, sittings: [{ days: mon-fri, from: 19:00, to: 22:00 }] }";

    private static string Kit(string kit, string model, string more = "") =>
        $"kits: [{{ kit: {kit}, {more} models: [{{ model: {model}, material: resin, areas: {{ suit: 1 cm² }}, route: [{{ clean: all }}] }}] }}]";

    [Fact]
    public void Everything_a_bench_can_say()
    {
        var bench = Written.Batch($$"""
            batch: Crew
            due: 2026-12-12 18:00
            pace: brisk
            aim: [short masks, even days]
            bench:
              zone: Europe/Lisbon
              sittings:
                - { days: mon-wed, from: 19:00, to: 24:00 }
                - { days: [sat, fri-sat], from: 22:00, to: 1:30 }
                - { days: "mon, wed", from: 06:30, to: 07:00 }
                - { date: 2026-12-05, from: 10:00, to: 13:00 }
              extra: { date: 2026-12-06, from: 14:00, to: 16:00 }
              away: [2026-12-08, 2026-12-20..2026-12-26]
              painters: [Ana, { painter: Rui, does: [coat, clean] }, { painter: Eva, days: [sat, 2026-12-08] }]
              tools: { airbrush: 2, drying rack: 24 }
              climate: { day: { air: 21 °C, humidity: 50 % }, night: { air: 59 °F, humidity: 65 %, surface: 12 °C } }
              most-per-day: 3 h
            {{Kit("Divers", "Diver")}}
            """);

        bench.Due!.By.Should().Be(new LocalDateTime(2026, 12, 12, 18, 0));
        bench.Pace.Should().Be(Pace.Brisk);
        bench.Aims.Should().Equal(BatchAim.ShortMasks, BatchAim.EvenDays, BatchAim.FinishSoon, BatchAim.FewChanges);
        var at = bench.Bench;
        at.Zone.Id.Should().Be("Europe/Lisbon");
        at.Weekly.Select(sitting => (sitting.Days.ToString(), sitting.From, sitting.To)).Should().Equal(
            ("Monday, Tuesday, Wednesday", new LocalTime(19, 0), LocalTime.Midnight),
            ("Friday, Saturday", new LocalTime(22, 0), new LocalTime(1, 30)),
            ("Monday, Wednesday", new LocalTime(6, 30), new LocalTime(7, 0)));
        at.Dated.Select(sitting => (sitting.Date, sitting.From.Hour)).Should().Equal((new LocalDate(2026, 12, 5), 10), (new LocalDate(2026, 12, 6), 14));
        at.Away.Should().Equal(new AwayDays(new LocalDate(2026, 12, 8), new LocalDate(2026, 12, 8)), new AwayDays(new LocalDate(2026, 12, 20), new LocalDate(2026, 12, 26)));
        at.Painters.Should().Equal(new Painter("Ana", []), new Painter("Rui", ["coat", "clean"]), new Painter("Eva", []) { Weekdays = [IsoDayOfWeek.Saturday], Dates = [new LocalDate(2026, 12, 8)] });
        at.Tools.Should().Equal(new BenchTool("airbrush", 2), new BenchTool("drying rack", 24));
        at.Climate.Night.Should().Be(new Climate(new Temperature(15), new Share(0.65), new Temperature(12)));
        at.MostPerDay.Should().Be(new Attended(180));
    }

    [Fact]
    public void What_a_bench_need_not_say()
    {
        var batch = Written.Batch($"batch: Crew\n{Bench}\n{Kit("Divers", "Diver")}");

        batch.Bench.Painters.Should().Equal(new Painter("painter 1", []));
        batch.Bench.Climate.Should().Be(BenchClimate.Standard);
        batch.Due.Should().BeNull();
        batch.Pace.Should().Be(Pace.Comfortable);
        batch.Aims.Should().Equal(BatchAim.FinishSoon, BatchAim.FewChanges, BatchAim.ShortMasks, BatchAim.EvenDays);
    }

    [Fact]
    public void A_sitting_edge_in_a_skipped_hour_is_noted_and_no_mistake()
    {
        var bound = Written.Bind($"batch: Crew\n{Bench[..^2]}, extra: [{{ date: 2026-03-28, from: 22:00, to: 01:30 }}] }}\n{Kit("Divers", "Diver")}");

        bound.Batch.Should().NotBeNull();
        bound.Findings.Single().Should().Match<Finding>(finding =>
            finding.Level == Level.Note && finding.Message == "There is no 01:30 on 2026-03-29 in Europe/Lisbon: the clocks go forward over it.");
    }

    [Theory]
    [InlineData("21:30", "19:30", "The sitting from 21:30 to 19:30 goes on over midnight, for 22 h.")]
    [InlineData("20:00", "08:15", "The sitting from 20:00 to 08:15 goes on over midnight, for 12 h 15 min.")]
    [InlineData("20:00", "08:00", null)]
    [InlineData("22:00", "01:30", null)]
    [InlineData("08:00", "24:00", null)]
    [InlineData("08:00", "00:00", null)]
    [InlineData("00:00", "24:00", null)]
    [InlineData("07:00", "23:00", null)]
    public void A_night_longer_than_anyone_paints_is_noted(string from, string to, string? said)
    {
        var bound = Written.Bind($"batch: Crew\n{Bench[..^2]}, extra: [{{ date: 2026-12-05, from: {from}, to: \"{to}\" }}] }}\n{Kit("Divers", "Diver")}");

        bound.Batch.Should().NotBeNull();
        bound.Findings.Select(finding => (finding.Level, finding.Message)).Should().Equal(said is null ? [] : [(Level.Note, said)]);
        bound.Findings.Select(finding => finding.Remedy).Should().Equal(said is null ? [] : [$"If it is the other way round, write 'from: {to}, to: {from}'."]);
    }

    [Fact]
    public void A_mix_takes_after_its_parts()
    {
        var paints = Written.Batch($$"""
            batch: Crew
            {{Bench}}
            families:
              enamel: { drying: { touch-dry: 2-4 h }, pot-life: 30 min }
              oil: { like: enamel, heavy: { cured: 30-90 d } }
            paints:
              straw: { family: acrylic lacquer, sheen: gloss, clear: yes, colour: "#E0B040", drying: { mask-safe: 8 h, wash-safe: never } }
              rust: { family: acrylic lacquer, sheen: matt, metallic: yes, stock: 40 mL, pot-life: 2 h, note: shake }
              bilge: { family: enamel }
              smear: { family: oil }
            mixes:
              twice: { parts: { brass: 1, straw: 3 } }
              brass:
                parts: { straw: 1, rust: 1.5 }
                thinner: { with: levelling thinner, share: 40 %, of: paint }
              odd: { parts: { straw: 1, bilge: 1 }, family: enamel, sheen: satin }
            {{Kit("Divers", "Diver")}}
            """).Paints.ToDictionary(paint => paint.Name);

        paints["straw"].Colour.Should().Be("#e0b040");
        paints["straw"].Thin.MaskSafe.Should().Be(DryingRange.Exactly(Drying.Hours(8)));
        paints["straw"].Thin.WashSafe.Should().BeNull();
        paints["straw"].HasLabelTimes.Should().BeTrue();
        paints["rust"].Stock.Should().Be(new Volume(40));

        var brass = paints["brass"];
        brass.Family.Name.Should().Be("acrylic lacquer");
        brass.Sheen.Should().Be(Sheen.Matt);
        brass.IsClear.Should().BeFalse();
        brass.IsMetallic.Should().BeTrue();
        brass.Colour.Should().Be("#e0b040");
        brass.PotLife.Should().Be(Drying.Hours(2));
        brass.Thin.MaskSafe.Should().Be(DryingRange.Hours(8, 8));
        brass.Thin.WashSafe.Should().BeNull();
        brass.Recipe!.Parts.Select(part => (part.Paint.Name, part.Parts)).Should().Equal(("straw", 1), ("rust", 1.5));
        brass.Recipe.Thinner!.ShareOfMix.Should().BeApproximately(0.4 / 1.4, 1e-12);
        paints["twice"].Recipe!.Parts[0].Paint.Should().Be(brass);
        paints["twice"].Sheen.Should().Be(Sheen.Gloss);
        paints["odd"].Family.Name.Should().Be("enamel");
        paints["odd"].PotLife.Should().Be(new Drying(30));

        paints["bilge"].Thin.TouchDry.Should().Be(DryingRange.Hours(2, 4));
        paints["bilge"].HasLabelTimes.Should().BeTrue("the file gives its family's times");
        paints["smear"].Family.Should().Match<Family>(family => family.Name == "oil" && family.Source == "the file");
        paints["smear"].Heavy.Cured.Should().Be(DryingRange.Days(30, 90));
    }

    [Fact]
    public void Parts_have_areas_and_may_be_of_another_material()
    {
        var route = Written.Batch($$"""
            batch: Crew
            {{Bench}}
            kits:
              - kit: Crane
                due: 2026-12-10 18:00
                models:
                  - model: Crane
                    material: polyurethane resin
                    weight: 2.5
                    allow: { mask-too-long: nobody looks }
                    parts:
                      tower: { areas: { tower: large, deck: 140 cm² } }
                      jib: { material: fibreboard, areas: { stripes: 1 cm² } }
                    route:
                      - clean: jib
                      - clean: tower
                      - join: [tower, jib]
                      - join: all
            """).Routes.Single();

        route.Model.Count.Should().Be(1);
        route.Model.Parts.Should().Equal("tower", "jib");
        route.Model.Areas[0].Should().Be(new Area("tower", "tower", new SurfaceSize(40)));
        route.Model.MaterialOf(route.Model.Areas[0]).Name.Should().Be("resin");
        route.Model.MaterialOf(route.Model.Areas[2]).Name.Should().Be("fibreboard");
        route.DueWeight.Should().Be(2.5);
        route.Due!.By.Day.Should().Be(10);
        route.Silences.Single().Reason.Should().Be("nobody looks");
        route.Steps.Select(step => step.Areas.ToString()).Should().Equal("stripes", "tower", "tower, deck, stripes", "tower, deck, stripes");
        route.Steps[2].Deeds.Single().Should().BeOfType<Deed.Join>().Which.Parts.Should().Equal("tower", "jib");
    }

    [Fact]
    public void Several_files_are_one_batch_on_one_bench()
    {
        var batch = Written.Batch(
            $"batch: Divers\ndue: 2026-12-12 18:00\n{Bench}\npaints: {{ bone: {{ family: enamel }} }}\n{Kit("Divers", "Diver")}",
            $"batch: Tokens\ndue: 2026-12-20 18:00\n{Bench}\nmixes: {{ pale: {{ parts: {{ bone: 1 }} }} }}\n{Kit("Tokens", "Token")}",
            $"batch: Crane\n{Kit("Crane", "Crane", "due: 2026-12-30 12:00,")}");

        batch.Name.Should().Be("Divers + Tokens + Crane");
        batch.Files.Should().Equal("crew1.yaml", "crew2.yaml", "crew3.yaml");
        batch.Due.Should().BeNull("one file leaves it open");
        batch.Routes.Select(route => route.Due?.By.Day).Should().Equal(12, 20, 30);
        batch.Paints.Select(paint => paint.Name).Should().Equal("bone", "pale");
    }

    [Theory]
    [InlineData("paints", "bone: { family: enamel, drying: { recoatable: 6-8 h } }", "bone: { drying: { recoatable: 6-8 h }, family: enamel }", "")]
    [InlineData("paints", "bone: { family: enamel, stock: 10 mL }", "bone: { family: enamel, stock: 12 mL }", "The paint or mix ‘bone’ is given twice, and not alike.")]
    [InlineData("paints", "bone: { family: enamel }", "bone: { family: enamel, stock: 12 mL }", "The paint or mix ‘bone’ is given twice, and not alike.")]
    [InlineData("mixes", "pale: { parts: { chalk: 2, soot: 1 } }", "pale: { parts: { chalk: 2, soot: 1 } }", "")]
    [InlineData("mixes", "pale: { parts: { chalk: 2, soot: 1 } }", "pale: { parts: { chalk: 1, soot: 2 } }", "The paint or mix ‘pale’ is given twice, and not alike.")]
    [InlineData("mixes", "chalk: { parts: { soot: 1 } }", "pale: { parts: { chalk: 1 } }", "The paint or mix ‘chalk’ is given twice.")]
    [InlineData("families", "slow enamel: { like: enamel }", "slow enamel: { like: enamel }", "")]
    [InlineData("families", "slow enamel: { like: enamel }", "slow enamel: { like: acrylic lacquer }", "The family ‘slow enamel’ is given twice, and not alike.")]
    [InlineData("mask-materials", "low-tack tape: { time-on: 12 h }", "low-tack tape: { time-on: 12 h }", "")]
    public void What_two_files_say_alike_they_may_both_say(string key, string one, string other, string said)
    {
        const string Chalk = "paints: { chalk: { family: enamel }, soot: { family: enamel } }";
        string File(string batch, string entry, string kit) => key == "paints"
            ? $"batch: {batch}\n{Bench}\npaints: {{ {entry} }}\n{kit}"
            : $"batch: {batch}\n{Bench}\n{Chalk}\n{key}: {{ {entry} }}\n{kit}";

        var findings = Written.Bind(File("Divers", one, Kit("Divers", "Diver")), File("Tokens", other, Kit("Tokens", "Token"))).Findings;

        string.Join(' ', findings.Select(finding => finding.Message)).Should().Be(said);
        findings.Select(finding => finding.Related.Single().Place.File).Distinct().Should().Equal(said.Length == 0 ? [] : ["crew1.yaml"]);
    }

    [Fact]
    public void Files_that_do_not_agree_are_told_with_both_places()
    {
        var findings = Written.Bind(
            $"batch: Divers\npace: brisk\n{Bench}\npaints: {{ bone: {{ family: enamel }} }}\n{Kit("Divers", "Diver")}",
            $"batch: Tokens\npace: comfortable\n{Bench.Replace("22:00", "21:00")}\npaints: {{ bone: {{ family: enamel, sheen: gloss }} }}\n{Kit("Divers", "Diver")}").Findings;

        findings.Select(finding => $"{finding.Place} {finding.Message} ({finding.Related.Single().Place})").Should().Equal(
            "crew2.yaml:2:1 The files are planned together, but this ‘pace’ differs from the first. (crew1.yaml:2:1)",
            "crew2.yaml:3:1 The files are planned on one bench, but this bench differs from the first. (crew1.yaml:3:1)",
            "crew2.yaml:4:11 The paint or mix ‘bone’ is given twice, and not alike. (crew1.yaml:4:11)",
            "crew2.yaml:5:15 Two kits are called ‘Divers’. (crew1.yaml:5:15)",
            "crew2.yaml:5:42 Two models are called ‘Diver’. (crew1.yaml:5:42)");
    }

    [Fact]
    public void A_small_mistake_in_the_writing_does_not_hide_those_in_the_meaning()
    {
        var bound = Written.Bind($"batch: Crew\nbatch: Crew\n{Bench}\n{Kit("Divers", "Diver").Replace("resin", "rosin")}");

        bound.Batch.Should().BeNull();
        bound.Findings.Select(finding => finding.Message).Should().Equal("The key ‘batch’ is given twice.", "There is no material called ‘rosin’.");
    }
}
