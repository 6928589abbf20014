using Pipeline.Abstractions;
using Pipeline.Engine;
using Pipeline.Planning;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Planning;

/// <summary>What checking says of steps that no plan has room for.</summary>
public class NoRoomTests
{
    private const string Evenings = "zone: Europe/Lisbon, sittings: [{ days: mon-fri, from: 19:00, to: 21:00 }]";

    [Fact]
    public void A_piece_that_takes_longer_than_any_sitting()
    {
        var finding = Said(Evenings, "by: brush, minutes: 130").Should().ContainSingle().Subject;
        finding.Level.Should().Be(Level.Error);
        finding.Place.Line.Should().Be(14, "the step is what could be made smaller");
        finding.Message.Should().StartWith("No sitting is long enough for").And.Contain("the longest sitting is 2 h");
        finding.Remedy.Should().Contain("Make a sitting longer");
    }

    [Fact]
    public void A_piece_that_takes_longer_than_a_day_may_have()
    {
        var finding = Said($"{Evenings}, most-per-day: 25 min", "by: brush, minutes: 30").Should().ContainSingle().Subject;
        finding.Message.Should().StartWith("No day allows enough work for").And.Contain("'most-per-day' at the bench is 25 min");
        finding.Remedy.Should().StartWith("Raise 'most-per-day'");
        Said($"{Evenings}, most-per-day: 100 min", "by: brush, minutes: 30").Should().BeEmpty();
    }

    [Theory]
    [InlineData("zone: Europe/Lisbon, sittings: [{ days: mon-fri, from: 19:00, to: 21:00 }, { date: 2031-05-03, from: 10:00, to: 16:00 }]", "one long Saturday is enough")]
    [InlineData("zone: Europe/Lisbon, sittings: [{ days: mon-fri, from: 19:00, to: 21:00 }, { days: sat, from: 23:00, to: 01:30 }]", "past midnight")]
    [InlineData("zone: Europe/Lisbon, sittings: [{ days: sat, from: 00:30, to: 02:30 }, { days: sun, from: 00:30, to: 02:30 }]", "once a year the clocks go back in this night")]
    public void Where_some_day_has_room_nothing_is_said(string bench, string because) =>
        Said(bench, "by: brush, minutes: 130").Should().BeEmpty(because);

    [Fact]
    public void Pieces_that_go_together_into_a_place_that_is_too_small()
    {
        var finding = Said($"{Evenings}, tools: {{ drying rack: 2 }}", "by: aerosol, together: yes").Should().ContainSingle().Subject;
        finding.Message.Should().Contain("needs 3 places of the drying rack at once, and there are 2");
    }

    [Fact]
    public void Work_that_nobody_at_the_bench_does()
    {
        var finding = Said($"{Evenings}, painters: [{{ painter: Ines, does: [clean, varnish] }}]", "by: brush, minutes: 10").Should().ContainSingle().Subject;
        finding.Message.Should().StartWith("Nobody at the bench does 'undercoat'");
    }

    [Fact]
    public void Planning_says_the_same_once()
    {
        var done = Checked(Evenings, "by: brush, minutes: 130");
        done.Sound.Should().NotBeNull("whoever asks for a plan is answered by the planner");
        var outcome = Planner.Plan(done.Walked!, Check.Trade, new PlanRequest(NodaTime.Instant.FromUtc(2026, 11, 30, 18, 0)));
        outcome.Should().BeOfType<PlanOutcome.NoPlan>().Which.Reasons.Select(finding => finding.Message).Should().Equal(done.Unplannable.Select(finding => finding.Message));
    }

    private static Sequence<Finding> Said(string bench, string particulars) => Checked(bench, particulars).Unplannable;

    private static Checked Checked(string bench, string particulars)
    {
        var yaml = $$"""
            batch: Boats
            bench: { {{bench}} }
            paints:
              slate undercoat: { family: acrylic lacquer, sheen: matt, colour: "#4a4f55" }
            kits:
              - kit: Example
                models:
                  - model: Boat
                    count: 3
                    material: styrene
                    areas: { hull: 20 cm² }
                    route:
                      - clean: all
                      - { undercoat: all, with: slate undercoat, {{particulars}} }
            """;
        var done = Stages.Check([new SourceText("case.yaml", yaml)], Check.Trade);
        done.Walked.Should().NotBeNull(Check.Told(done.Findings));
        return done;
    }
}
