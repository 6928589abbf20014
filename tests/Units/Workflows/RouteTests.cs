using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Workflows;

public class RouteTests
{
    [Fact]
    public void A_step_names_its_areas_in_the_models_order()
    {
        var steps = Written.Route("""
            - clean: all
            - coat: [glass, suit, glass]
              with: harbour black
              by: airbrush
              coats: 2
            - coat: helmet
              with: rope bone
            """).Steps;

        steps.Select(step => step.Verb).Should().Equal("clean", "coat", "coat");
        steps[0].Areas.Should().Equal("suit", "helmet", "glass");
        steps[1].Areas.Should().Equal("suit", "glass");
        steps[1].As.Should().Be("suit+glass");
        steps[1].Lays.Single().Layer.Should().Match<Layer>(layer => layer.Step == 1 && layer.Name == "harbour black" && layer.Coats == 2 && layer.Method == Method.Airbrush);
        steps[2].Place.Should().Be(new Place("crew.yaml", 22, 13));
    }

    [Fact]
    public void What_the_file_says_of_a_step_stands_above_what_the_verb_says()
    {
        var step = Written.Route("""
            - coat: suit
              with: harbour black
              as: first black
              minutes: 12
              set-up: 10 min
              put-away: 1 h
              together: yes
              unattended: 2 h
              note: keep it thin
              drying: { mask-safe: 8-16 h, wash-safe: never }
              at: 2026-12-05 10:00
              allow: { mask-too-long: low tack, tested }
            """.Replace("low tack, tested", "low tack")).Steps.Single();

        step.As.Should().Be("first black");
        step.Note.Should().Be("keep it thin");
        step.Work.Should().Be(new Work { PerUnit = new Attended(12), SetUp = new Attended(10), PutAway = new Attended(60), Together = true, Unattended = Drying.Hours(2), NeedsDryingPlace = true, IsFromFile = true });
        var layer = step.Lays.Single().Layer;
        layer.Drying.MaskSafe.Should().Be(DryingRange.Hours(8, 16));
        layer.Drying.WashSafe.Should().BeNull();
        layer.Drying.Cured.Should().Be(DryingRange.Days(3, 7));
        layer.HasLabelTimes.Should().BeTrue();
        step.Silences.Single().Should().Match<Silence>(silence => silence.Rule == "mask-too-long" && silence.Reason == "low tack");
    }

    // a bath takes as long for one piece as for all; on a tray each still gets its coat
    [Theory]
    [InlineData("coat: suit, with: rope bone", 30)]
    [InlineData("coat: suit, with: rope bone, together: yes", 90)]
    [InlineData("coat: suit, with: rope bone, together: yes, minutes: 20 min", 20)]
    [InlineData("clean: all", 6)]
    [InlineData("clean: all, together: no", 2)]
    public void What_is_done_together_is_counted_once_for_all_three(string step, double minutes) =>
        Written.Route($"- {{ {step} }}").Steps.Single().Work.PerUnit.Minutes.Should().Be(minutes);

    [Fact]
    public void A_pin_and_an_order_are_kept_by_index()
    {
        var route = Written.Route("""
            - coat: suit
              with: harbour black
              as: first
            - clean: glass
              at: 2026-12-05 10:00
              after: first
            """);

        route.Pins.Single().Should().Match<Pin>(pin => pin.Step == 1 && pin.At == new LocalDateTime(2026, 12, 5, 10, 0));
        route.Steps[1].After.Should().Equal(0);
    }

    [Fact]
    public void A_scheme_is_followed_with_its_placeholders_filled()
    {
        var route = Written.Route(
            """
            - follow: ground
              metal: [suit, helmet]
              black: harbour black
            - follow: ground
              metal: glass
              black: rope bone
            """,
            """
            schemes:
              ground:
                areas: [metal]
                paints: [black]
                route:
                  - mask: metal
                    using: low-tack tape
                    as: tape
                  - coat: metal
                    with: black
                  - unmask: tape
            """);

        route.Steps.Select(step => step.As).Should().Equal("tape", "suit+helmet", "suit+helmet", "tape 2", "glass", "glass");
        route.Steps[2].Deeds.Should().Equal(new Deed.TakeMaskOff("tape"));
        route.Steps[2].Areas.Should().Equal("suit", "helmet");
        route.Steps[5].Deeds.Should().Equal(new Deed.TakeMaskOff("tape 2"));
        route.Steps[1].Lays.Single().Layer.Name.Should().Be("harbour black");
        route.Steps[4].Lays.Single().Layer.Name.Should().Be("rope bone");
        route.Steps[4].Scheme.Should().Be("ground");
        route.Steps[4].Place.Line.Should().Be(16);
        route.Steps[4].FollowedFrom!.Line.Should().BeGreaterThan(route.Steps[1].FollowedFrom!.Line);
    }

    [Fact]
    public void A_scheme_may_take_off_what_the_route_put_on_and_the_route_what_a_scheme_put_on()
    {
        var steps = Written.Route(
            """
            - mask: glass
              using: low-tack tape
              as: outer
            - follow: middle
              metal: suit
            - unmask: inner
            """,
            """
            schemes:
              middle:
                areas: [metal]
                route:
                  - mask: metal
                    using: low-tack tape
                    as: inner
                  - unmask: outer
            """).Steps;

        steps[2].Deeds.Should().Equal(new Deed.TakeMaskOff("outer"));
        steps[3].Deeds.Should().Equal(new Deed.TakeMaskOff("inner"));
    }

    [Fact]
    public void A_mask_that_is_not_on_is_left_to_the_rules()
    {
        var steps = Written.Route("""
            - unmask: glass
            - unmask: later
            - mask: [glass, suit]
              using: low-tack tape
              as: later
            - unmask: later
            - unmask: later
            """).Steps;

        steps[0].Deeds.Should().Equal(new Deed.TakeMaskOff("glass"));
        steps[1].Deeds.Should().Equal(new Deed.TakeMaskOff("later"));
        steps[4].Areas.Should().Equal("suit", "glass");
    }

    [Fact]
    public void A_mask_comes_off_by_its_name_or_by_an_area_it_lies_on()
    {
        var steps = Written.Route("""
            - mask: [glass, helmet]
              using: low-tack tape
            - mask: suit
              using: liquid mask
              as: fittings
              over: glass
            - unmask: fittings
            - unmask: helmet
            - unmask: all
            """).Steps;

        steps[1].Deeds.Single().Should().BeOfType<Deed.PutMaskOn>().Which.Over.Should().Be("helmet+glass");
        steps[2].Deeds.Should().Equal(new Deed.TakeMaskOff("fittings"));
        steps[3].Deeds.Should().Equal(new Deed.TakeMaskOff("helmet+glass"));
        steps[3].Areas.Should().Equal("helmet", "glass");
        steps[4].Deeds.Should().BeEmpty();
    }
}
