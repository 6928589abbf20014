using Pipeline.Abstractions;
using Pipeline.Planning;
using static Pipeline.Tests.Units.Planning.RouteSteps;

namespace Pipeline.Tests.Units.Planning;

/// <summary>No plan, and what is said about it.</summary>
public class HindranceTests
{
    private static readonly Paint Boot = Pot("wet boot", Waterborne);

    [Fact]
    public void A_step_longer_than_any_sitting()
    {
        var finding = Workshop.In().Weekly("Mon Wed", "19:00", "20:00").Model("Crane", 1, r => r.Work("trim", minutes: 95)).NoPlan();
        finding.Message.Should().Be("No sitting is long enough for 'trim all areas': it needs 95 min with set-up and cleaning, and the longest sitting is 60 min.");
        finding.Place.Line.Should().Be(101);
        finding.Level.Should().Be(Level.Error);
    }

    [Fact]
    public void A_step_longer_than_a_day_may_have()
    {
        var finding = Workshop.Evenings().MostPerDay(30).Model("Crane", 1, r => r.Work("trim", minutes: 95)).NoPlan();
        finding.Message.Should().Be("No day allows enough work for 'trim all areas': it needs 95 min with set-up and cleaning, and 'most-per-day' at the bench is 30 min.");
        finding.Remedy.Should().StartWith("Raise 'most-per-day' to 95 min or more");
    }

    [Fact]
    public void Two_decided_times_that_are_more_than_a_day_may_have()
    {
        var finding = Workshop.Evenings().MostPerDay(60).Model("Crane", 1, r => r.Work("trim", 40).At("2026-12-01 19:00")).Model("Diver", 1, r => r.Work("trim", 40).At("2026-12-01 20:00")).NoPlan();
        finding.Message.Should().EndWith("or the day has no room for it within 'most-per-day'.");
        finding.Remedy.Should().Contain("raise 'most-per-day'");
    }

    [Fact]
    public void Sittings_that_end_too_soon_for_what_a_day_may_have() =>
        Workshop.In().On("2026-12-01", "19:00", "21:00").MostPerDay(60).Model("Crane", 6, r => r.Work("trim", minutes: 30)).NoPlan()
            .Message.Should().Contain("2 h of work find no time").And.Contain("2 more sittings at the least");

    [Fact]
    public void Sittings_that_end_too_soon()
    {
        var finding = Workshop.In().On("2026-12-01", "19:00", "20:00").On("2026-12-02", "19:00", "20:00")
            .Model("Crane", 6, r => r.Work("trim", minutes: 30)).NoPlan();
        finding.Message.Should().Be("The sittings end before the work does: 60 min of work find no time, first 'trim all areas'. It needs 1 more sitting at the least. The last one ends Wed 2 Dec 20:00.");
        finding.Place.Should().Be(Workshop.BenchPlace);
    }

    [Fact]
    public void No_sitting_at_all()
    {
        var finding = Workshop.In().Model("Crane", 1, r => r.Work("trim", minutes: 5)).NoPlan();
        finding.Message.Should().StartWith("There is no sitting after Mon 30 Nov 18:00");
        finding.Remedy.Should().Contain("sittings");
    }

    [Fact]
    public void Sittings_that_are_all_over() =>
        Workshop.In().On("2026-11-01", "19:00", "20:00").Model("Crane", 1, r => r.Work("trim", minutes: 5)).NoPlan().Message.Should().StartWith("There is no sitting after");

    [Fact]
    public void Work_that_nobody_does()
    {
        var finding = Workshop.Evenings().Painter("Ana", "coat").Painter("Rui", "clean").Model("Crane", 1, r => r.Work("trim", minutes: 5)).NoPlan();
        finding.Message.Should().Be("Nobody at the bench does 'trim': Ana and Rui are each kept to other work.");
    }

    [Fact]
    public void Air_too_damp_for_any_figure() =>
        Workshop.Evenings().Air(21, 93).Model("Crane", 1, r => r.Brush(Boot).Brush(Boot)).NoPlan().Message.Should().StartWith("At 93 % humidity");

    [Fact]
    public void A_decided_time_before_the_plan_begins() =>
        Workshop.Evenings().Model("Crane", 1, r => r.Work("trim", minutes: 5).At("2026-11-27 20:00")).NoPlan()
            .Message.Should().Be("'trim all areas' is set for Fri 27 Nov 20:00, and the plan begins Mon 30 Nov 18:00.");

    [Fact]
    public void A_decided_time_when_nobody_sits() =>
        Workshop.Evenings().Model("Crane", 1, r => r.Work("trim", minutes: 5).At("2026-12-01 09:00")).NoPlan()
            .Message.Should().StartWith("'trim all areas' is set for Tue 1 Dec 09:00, but that cannot be kept: no sitting is open then; the one before ends Mon 30 Nov 22:00");

    [Theory]
    [InlineData(30, 30)] // trimmed on Monday it stands until Wednesday, so its first coat comes on Thursday
    [InlineData(90, 0)] // trimming fills Monday, so the first coat comes on Tuesday at 19:00 and needs most of an hour
    public void A_decided_time_that_what_comes_before_it_leaves_no_time_for_is_named_first(double minutes, double hours)
    {
        var finding = Workshop.In().Weekly("Mon Tue Thu", "19:00", "20:30")
            .Model("Saint", 1, r => r.Work("trim", minutes).Rest(hours).Brush(Boot).Brush(Pot("gilt", Metallic), "suit").At("2026-12-01 19:10")).NoPlan();

        finding.Message.Should().StartWith("'coat the suit' is set for Tue 1 Dec 19:10, but that is ").And.Contain("too early: what comes before it cannot be done sooner");
        finding.Place.Line.Should().Be(104, "that is the line the painter would change");
    }

    [Fact]
    public void A_mask_that_must_be_off_before_what_dries_under_it_may_be()
    {
        var finding = Workshop.Evenings().Model("Crane", 1, r => r.Mask("soles", "boots").Brush(Boot, "suit").Rest(hours: 40).Unmask("soles")).NoPlan();
        finding.Message.Should().Contain("24 h");
        finding.Place.Line.Should().BeInRange(101, 104);
    }

    [Fact]
    public void More_units_at_once_than_the_drying_rack_holds_is_no_obstacle_one_after_another() =>
        Workshop.Evenings().Tool("airbrush", 1).Tool("drying rack", 2).Model("Crane", 6, r => r.Spray(Boot)).Outcome().Should().BeOfType<PlanOutcome.Planned>();

    [Theory]
    [InlineData("0001-01-01 00:00")]
    [InlineData("9998-12-31 00:00")]
    public void A_plan_from_the_ends_of_the_calendar(string from) =>
        Workshop.Evenings().Model("Crane", 1, r => r.Work("trim", minutes: 5)).NoPlan(from).Message.Should().StartWith("A plan can begin");

    [Fact]
    public void Times_out_of_all_proportion_are_told_not_thrown()
    {
        Workshop.Evenings().Model("Crane", 1, r => r.Work("trim", minutes: 1e300)).NoPlan().Message.Should().StartWith("No sitting is long enough");
        Workshop.Evenings().Model("Crane", 1, r => r.Rest(hours: 1e300).Work("trim", minutes: 5)).NoPlan().Level.Should().Be(Level.Error);
        Workshop.Evenings().Model("Crane", 1, r => r.Work("trim", minutes: 5).At("9998-12-01 19:00")).NoPlan().Level.Should().Be(Level.Error);
    }
}
