using NodaTime;
using Pipeline.Planning;

namespace Pipeline.Tests.Units.Planning;

/// <summary>What a sitting says is to be taken out, and until when something goes on by itself, of real files.</summary>
public class AtHandTests
{
    [Theory]
    [InlineData("decal: hull", "decal setter")]
    [InlineData("decal: hull\n    setter: no", null)]
    [InlineData("decal: hull\n  - soften: hull", "decal softener")]
    [InlineData("pigment: hull\n    fix: spirit", "white spirit")]
    [InlineData("pigment: hull\n    fix: acrylic-resin", "acrylic resin to fix with")]
    [InlineData("pigment: hull", null)]
    [InlineData("sponge: hull\n    with: rust shade", "sponge")]
    [InlineData("mask: deck\n    using: putty\n    as: blobs\n  - unmask: blobs", "putty")]
    public void What_a_step_takes_besides_its_paint(string step, string? thing)
    {
        string[] aids = ["decal setter", "decal softener", "white spirit", "acrylic resin to fix with", "sponge", "putty"];
        var taken = Plan($$"""
            material: styrene
            areas: { hull: 20 cm², deck: 6 cm² }
            route:
              - undercoat: all
                with: slate undercoat
                by: airbrush
              - varnish: all
                with: clear w gloss
                by: airbrush
              - {{step}}
            """).Days.SelectMany(day => day.Sittings).SelectMany(sitting => sitting.TakeOut).ToList();

        if (thing is null)
            taken.Should().NotIntersectWith(aids);
        else
            taken.Should().Contain(thing);
    }

    [Fact]
    public void A_lamp_is_taken_takenand_says_until_when_it_runs()
    {
        var plan = Plan("""
            count: 3
            material: printed resin
            areas: { hull: 20 cm² }
            route:
              - clean: all
                with: isopropyl
              - post-cure: all
                unattended: 40 min
            """);

        var sittings = plan.Days.SelectMany(day => day.Sittings).ToList();
        sittings.SelectMany(sitting => sitting.TakeOut).Should().Contain("curing lamp");
        var lamp = sittings.SelectMany(sitting => sitting.Tasks).Single(task => task.Verb == "post-cure");
        var over = lamp.Starts.Single(wait => wait.For == "ends by itself");
        over.Earliest.Should().Be(over.Comfortable);
        (over.Earliest.ToInstant() - lamp.To.ToInstant()).Should().BeLessThanOrEqualTo(Duration.FromMinutes(40)).And.BeGreaterThanOrEqualTo(Duration.FromMinutes(30), "the lamp is put away by hands within it");
    }

    // nine tenths of 30 min, 60 min, 6 h and 48 h, and of a label's 48 h
    [Theory]
    [InlineData("coat: hull\n    with: derrick yellow\n    by: airbrush\n  - coat: hull\n    with: girder grey\n    by: airbrush", "needs about 30 min")]
    [InlineData("coat: hull\n    with: derrick yellow\n    by: brush\n  - coat: hull\n    with: girder grey\n    by: brush", "needs about 55 min")]
    [InlineData("mask: hull\n    using: low-tack tape\n    as: band\n  - unmask: band", "needs about 5 h 30 min")]
    [InlineData("coat: hull\n    with: hull green\n    by: airbrush\n  - coat: hull\n    with: hull green\n    by: airbrush", "needs about 43 h 30 min")]
    [InlineData("coat: hull\n    with: derrick yellow\n    by: brush\n    drying: { recoatable: 2 h }\n  - coat: hull\n    with: girder grey\n    by: brush", "needs 2 h")]
    public void Lengths_of_waits_are_said_as_people_say_them_and_never_shorter(string steps, string said)
    {
        Plan($$"""
            material: styrene
            areas: { hull: 20 cm² }
            route:
              - undercoat: all
                with: slate undercoat
                by: airbrush
              - {{steps}}
            """).Days.SelectMany(day => day.Sittings).SelectMany(sitting => sitting.Tasks).Select(task => task.WhyNotEarlier)
            .Should().Contain(why => why.Contains(said, StringComparison.Ordinal));
    }

    private static Plan Plan(string model) =>
        Planner.Plan(Check.Walked(Prelude.Around(model)), Check.Trade, new PlanRequest(Instant.FromUtc(2026, 11, 30, 8, 0), SearchEffort.Quick))
            .Should().BeOfType<PlanOutcome.Planned>().Subject.Plan;
}
