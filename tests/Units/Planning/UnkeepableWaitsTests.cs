using Pipeline.Abstractions;
using Pipeline.Engine;
using Pipeline.Planning;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Planning;

/// <summary>What checking says of waits that no plan can keep.</summary>
public class UnkeepableWaitsTests
{
    private const string DayLong = "[{ days: mon-sun, from: 08:00, to: 23:00 }]";
    private const string Evenings = "[{ days: mon-sun, from: 19:00, to: 21:30 }]";

    private const string TwoCoats = """
                  - coat: hull
                    with: hull yellow
                    by: airbrush
                  - coat: hull
                    with: hull yellow
                    by: airbrush

        """;

    private const string OneCoat = """
                  - coat: hull
                    with: hull yellow
                    by: airbrush

        """;

    [Fact]
    public void Tape_over_two_coats_of_enamel_that_need_longer_than_it_may_lie()
    {
        var finding = Said(DayLong, "low-tack tape", TwoCoats).Should().ContainSingle().Subject;
        finding.Level.Should().Be(Level.Error);
        finding.Place.Line.Should().Be(30, "the step that takes the tape off comes too late");
        finding.Message.Should().StartWith("These times contradict each other by")
            .And.Contain("'coat the hull' to 'coat the hull' at least 24 h (recoat-too-soon)")
            .And.Contain("'mask the lens' to 'unmask blobs' at most 24 h (mask-on-too-long)");
        finding.Remedy.Should().StartWith("Take 'blobs' off in between and mask anew");
    }

    [Theory]
    [InlineData("cut film", TwoCoats)]
    [InlineData("low-tack tape", OneCoat)]
    [InlineData("cover", TwoCoats)]
    public void What_may_lie_long_enough_is_left_alone(string mask, string coats) =>
        Said(DayLong, mask, coats, pace: "brisk").Should().BeEmpty();

    [Fact]
    public void Putty_that_must_be_off_within_half_a_day_where_the_coat_dries_until_the_next_evening()
    {
        var finding = Said(Evenings, "putty", OneCoat).Should().ContainSingle().Subject;
        finding.Level.Should().Be(Level.Warning, "at the low figure the coat is touch-dry the same evening");
        finding.Message.Should().Contain("At the comfortable pace").And.Contain("within 12 h");
        finding.Remedy.Should().Contain("pace: brisk");
    }

    [Theory]
    [InlineData("[{ days: mon-sun, from: 19:00, to: 21:30 }, { days: sun, from: 14:00, to: 16:00 }]")]
    [InlineData("[{ days: mon-sun, from: 19:00, to: 21:30 }, { date: 2031-05-01, from: 14:00, to: 16:00 }]")]
    public void One_day_with_another_sitting_is_room_enough(string sittings) => Said(sittings, "putty", OneCoat).Should().BeEmpty();

    [Fact]
    public void Planning_says_it_once_and_without_a_search()
    {
        var done = Checked(Batch(Evenings, "putty", OneCoat));
        done.Sound.Should().NotBeNull("whoever asks for a plan is answered by the planner");
        var outcome = Planner.Plan(done.Walked!, Check.Trade, new PlanRequest(NodaTime.Instant.FromUtc(2026, 11, 30, 18, 0)) { Effort = SearchEffort.Thorough });
        outcome.Should().BeOfType<PlanOutcome.NoPlan>().Which.Reasons.Should().ContainSingle().Which.Rule.Should().Be("mask-on-too-long");
    }

    [Fact]
    public void A_rule_silenced_takes_its_wait_out_of_the_ring() =>
        Said(DayLong, "low-tack tape", TwoCoats, silence: "allow: { mask-on-too-long: tried on a card }").Should().BeEmpty();

    [Fact]
    public void Where_a_model_has_a_mistake_that_is_said_first() =>
        Checked(Batch(DayLong, "low-tack tape", TwoCoats).Replace("- unmask: blobs", "- unmask: blobs\n          - unmask: blobs", StringComparison.Ordinal))
            .Unplannable.Should().BeEmpty();

    private static Sequence<Finding> Said(string sittings, string mask, string coats, string pace = "comfortable", string silence = "") =>
        Checked(Batch(sittings, mask, coats, pace, silence)).Unplannable;

    private static Checked Checked(string yaml)
    {
        var done = Stages.Check([new SourceText("case.yaml", yaml)], Check.Trade);
        done.Walked.Should().NotBeNull(Check.Told(done.Findings));
        return done;
    }

    private static string Batch(string sittings, string mask, string coats, string pace = "comfortable", string silence = "") => $$"""
        batch: Boats
        pace: {{pace}}
        {{silence}}
        bench:
          zone: Europe/Lisbon
          sittings: {{sittings}}
        paints:
          slate undercoat: { family: acrylic lacquer, sheen: matt, colour: "#4a4f55" }
          hull yellow: { family: enamel, sheen: satin, colour: "#d8a11c" }
        kits:
          - kit: Example
            models:
              - model: Boat
                count: 3
                material: styrene
                areas: { hull: 20 cm², lens: 2 cm² }
                route:
                  - undercoat: all
                    with: slate undercoat
                    by: airbrush
                  - mask: lens
                    using: {{mask}}
                    as: blobs
        {{coats}}          - unmask: blobs
        """;
}
