using Pipeline.Abstractions;
using Pipeline.Engine;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Mends;

/// <summary>Mending to the end: one mend after the other, each checked, in schemes where the step is a scheme's.</summary>
public sealed class MenderTests
{
    [Fact]
    public void Mends_that_touch_each_other_are_made_one_after_the_other()
    {
        var mended = Mended("""
            material: resin
            areas: { hull: 20 cm², lens: 2 cm² }
            route:
              - coat: hull
                with: girder grey
                by: brush
              - decal: hull
              - varnish: all
                with: clear w matt
                by: airbrush
            """);

        Verbs(mended).Should().Equal("clean", "undercoat", "coat", "varnish", "decal", "varnish");
        Check.Told(mended.After.Findings).Should().BeEmpty();
    }

    [Fact]
    public void A_mistyped_name_is_mended_and_what_the_rules_say_then()
    {
        var mended = Mended("""
            material: resin
            areas: { hull: 20 cm², lens: 2 cm² }
            route:
              - undercoat: al
                with: slate undercaot
                by: airbrush
            """.Replace("al\n", "all\n", StringComparison.Ordinal));

        mended.Before.Walked.Should().BeNull();
        Verbs(mended).Should().Equal("clean", "undercoat");
        Check.Told(mended.After.Findings).Should().BeEmpty();
    }

    [Fact]
    public void Of_two_equally_near_names_neither_is_taken()
    {
        var mended = Mended("""
            material: styrene
            areas: { deck a: 20 cm², deck b: 2 cm² }
            route:
              - undercoat: deck c
                with: slate undercoat
                by: airbrush
            """);

        mended.Made.IsEmpty.Should().BeTrue();
        mended.After.HasErrors.Should().BeTrue();
    }

    [Fact]
    public void What_would_bring_another_finding_is_not_offered_to_an_editor()
    {
        // a varnish before the decal would have to wait for the enamel, and the decal's time is decided
        var source = new SourceText("case.yaml", Prelude.Around("""
            material: styrene
            areas: { hull: 20 cm², lens: 2 cm² }
            route:
              - undercoat: hull
                with: slate undercoat
                by: brush
              - coat: hull
                with: hull green
                by: brush
                at: 2026-12-01 10:00
              - decal: hull
                at: 2026-12-15 20:00
              - undercoat: lens
                with: slate undercoat
                by: brush
              - coat: lens
                with: girder grey
                by: brush
              - decal: lens
              - varnish: all
                with: clear w satin
                by: airbrush
            """));
        var done = Stages.Check([source], Check.Trade);
        Stages.WithEdits([source], done.Findings).Count(finding => !finding.Edits.IsEmpty).Should().Be(2, "or the case shows nothing");

        var offered = Mender.WithSoundEdits(done, Check.Trade).Where(finding => !finding.Edits.IsEmpty).ToList();

        offered.Should().ContainSingle().Which.Areas.Should().Equal("lens");
    }

    [Fact]
    public void A_share_that_does_not_say_of_what_is_asked_for_and_not_guessed()
    {
        var source = new SourceText("case.yaml", File.ReadAllText(Path.Combine(Golden.Repository, "workflows/risky/share-of-what.yaml")));

        var mended = Mender.Mend([source], Check.Trade);

        mended.Made.IsEmpty.Should().BeTrue();
        mended.After.Texts[0].Should().Be(source);
    }

    [Fact]
    public void A_step_of_a_scheme_is_mended_in_the_scheme_for_every_model_that_follows_it()
    {
        var source = new SourceText("case.yaml", Prelude.Text.Replace(
            "kits:\n  - kit: Example\n    models:\n      - model: Example\n",
            """
            schemes:
              marked:
                areas: [plates, glass]
                route:
                  - undercoat: all
                    with: slate undercoat
                    by: airbrush
                  - mask: glass
                    using: low-tack tape
                    as: discs
                  - coat: plates
                    with: girder grey
                    by: airbrush
                  - decal: plates
                  - varnish: all
                    with: clear w matt
                    by: airbrush
            kits:
              - kit: Example
                models:
                  - model: Tug
                    material: styrene
                    areas: { hull: 20 cm², deck: 9 cm², lens: 2 cm² }
                    route: [{ follow: marked, plates: [hull, deck], glass: lens }]
                  - model: Barge
                    material: styrene
                    areas: { hull: 20 cm², lamp: 2 cm² }
                    route: [{ follow: marked, plates: hull, glass: lamp }]

            """,
            StringComparison.Ordinal));

        var mended = Mender.Mend([source], Check.Trade);

        Check.Told(mended.After.Findings).Should().BeEmpty();
        mended.After.Texts[0].Text.Should().Contain("      - varnish: plates\n        with: clear w gloss\n        by: brush\n      - decal: plates\n");
        mended.After.Texts[0].Text.Should().Contain("\n      - unmask: discs\n");
        mended.Before.Findings.Should().OnlyContain(finding => finding.Mend != null);
    }

    [Fact]
    public void A_forgotten_mask_comes_off_before_the_varnish_that_names_what_is_under_it()
    {
        var mended = Mended("""
            material: styrene
            areas: { hull: 20 cm², lens: 2 cm² }
            route:
              - undercoat: all
                with: slate undercoat
                by: airbrush
              - mask: lens
                using: low-tack tape
                as: discs
              - coat: hull
                with: girder grey
                by: airbrush
              - varnish: [hull, lens]
                with: clear w satin
                by: airbrush
            """);

        Verbs(mended).Should().Equal("undercoat", "mask", "coat", "unmask", "varnish");
    }

    [Fact]
    public void A_forgotten_mask_that_keeps_a_shine_from_matt_varnish_comes_off_after_it()
    {
        var mended = Mended("""
            material: styrene
            areas: { hull: 20 cm², lens: 2 cm² }
            route:
              - undercoat: all
                with: slate undercoat
                by: airbrush
              - coat: lens
                with: harbour black
                by: brush
              - mask: lens
                using: low-tack tape
                as: discs
              - coat: hull
                with: girder grey
                by: airbrush
              - varnish: [hull, lens]
                with: clear w matt
                by: airbrush
            """);

        Verbs(mended).Should().Equal("undercoat", "coat", "mask", "coat", "varnish", "unmask");
    }

    [Fact]
    public void A_forgotten_mask_comes_off_before_loose_pigment_beside_it()
    {
        var mended = Mended("""
            material: styrene
            areas: { hull: 20 cm², lens: 2 cm² }
            route:
              - undercoat: all
                with: slate undercoat
                by: airbrush
              - mask: lens
                using: low-tack tape
                as: discs
              - coat: hull
                with: girder grey
                by: airbrush
              - pigment: hull
            """);

        Verbs(mended).Should().Equal("undercoat", "mask", "coat", "unmask", "pigment");
    }

    [Fact]
    public void A_decal_is_varnished_by_itself_and_not_with_everything_beside_it()
    {
        var mended = Mended("""
            material: styrene
            areas: { hull: 20 cm², lens: 2 cm² }
            route:
              - undercoat: all
                with: slate undercoat
                by: airbrush
              - coat: hull
                with: gloss teal
                by: brush
              - coat: lens
                with: harbour black
                by: brush
              - decal: hull
              - wash: hull
                with: bilge wash
            """);

        Verbs(mended).Should().Equal("undercoat", "coat", "coat", "decal", "varnish", "wash");
        mended.After.Texts[0].Text.Should().NotContain("overspray");
    }

    [Theory]
    [InlineData("hull", true)]
    [InlineData("deck", false)]
    public void A_mend_after_which_its_rule_speaks_of_another_area_is_not_made(string left, bool isMade)
    {
        var source = new SourceText("case.yaml", Prelude.Around("""
            material: styrene
            areas: { hull: 20 cm², deck: 2 cm² }
            route:
              - undercoat: all
                with: slate undercoat
                by: airbrush
            """));
        var trade = Check.Trade with { Rules = [new("Tides", new LeavesSomething(left))] };

        var mended = Mender.Mend([source], trade);

        mended.Made.IsEmpty.Should().Be(!isMade);
        mended.After.Findings.Should().HaveCount(isMade ? 1 : 2);
    }

    // two warnings about the hull; with a note on the step one, about an area that the test says
    private sealed class LeavesSomething(string left) : Rule
    {
        public override string Name => "leaves-something";

        public override string Summary => "A step bears a note.";

        public override string Source => "common practice";

        public override IEnumerable<Verdict> Judge(Moment moment)
        {
            if (moment.Step.Note is not null)
                return [Says(moment, left, "It has a note.")];
            return [Says(moment, "hull", "It has no note."), Says(moment, "hull", "Nobody knows why.") with { Mend = new Mend.SetKey(moment.Step.Place, "note", "thin") }];
        }

        private static Verdict.Says Says(Moment moment, string area, string message) =>
            new() { Step = moment.Step.Index, Level = Level.Warning, Areas = [area], Message = message, Remedy = "Say why." };
    }

    public static TheoryData<string> BrokenFiles =>
        [.. Directory.GetFiles(Path.Combine(Golden.Repository, "workflows"), "*.yaml", SearchOption.AllDirectories).Select(path => Path.GetRelativePath(Golden.Repository, path)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(BrokenFiles))]
    public void No_file_is_worse_for_mending_and_none_is_mended_twice(string file)
    {
        var source = new SourceText(file, File.ReadAllText(Path.Combine(Golden.Repository, file)));

        var once = Mender.Mend([source], Check.Trade);
        var twice = Mender.Mend(once.After.Texts, Check.Trade);

        twice.After.Texts.Should().Equal(once.After.Texts);
        if (once.Before.Walked is not null)
            once.After.Findings.Count.Should().Be(once.Before.Findings.Count - once.Made.Count, Check.Told(once.After.Findings));
    }

    [Fact]
    public void The_demo_needs_no_mending_and_stays_as_it_is()
    {
        var source = new SourceText("tidewater.yaml", File.ReadAllText(Path.Combine(Golden.Repository, "workflows/tidewater.yaml")));

        var mended = Mender.Mend([source], Check.Trade);

        mended.Made.IsEmpty.Should().BeTrue();
        mended.After.Texts[0].Should().Be(source);
    }

    private static Mended Mended(string model) => Mender.Mend([new SourceText("case.yaml", Prelude.Around(model))], Check.Trade);

    private static IEnumerable<string> Verbs(Mended mended) => mended.After.Walked!.Routes.Single().Route.Steps.Select(step => step.Verb);
}
