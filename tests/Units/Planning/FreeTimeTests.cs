using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Planning;
using Pipeline.Workflows;
using static Pipeline.Tests.Units.Planning.RouteSteps;

namespace Pipeline.Tests.Units.Planning;

/// <summary>Why a sitting is left early although something is still to be done. Evenings from 19:00 to 22:00.</summary>
public class FreeTimeTests
{
    private static readonly Paint Boot = Pot("wet boot", Waterborne);

    [Fact]
    public void Where_everything_that_is_left_has_to_wait_the_evening_is_free_and_the_plan_says_so()
    {
        var sittings = Sittings(Workshop.Evenings().Model("Crane", 1, r => r.Work("trim", 60).Rest(5).Photograph()));

        sittings.Select(sitting => sitting.Free).Should().Equal(new FreeTime(120, new FreeBecause.AllWaits()), null);
    }

    [Fact]
    public void What_is_kept_free_of_every_sitting_is_not_counted() =>
        Sittings(Workshop.Evenings().Slack(15).Model("Crane", 1, r => r.Work("trim", 60).Rest(5).Photograph()))[0].Free!.Minutes.Should().Be(93);

    [Fact]
    public void What_is_ready_may_take_longer_than_is_left()
    {
        var sittings = Sittings(Workshop.Evenings().Model("Crane", 1, r => r.Work("trim", 100)).Model("Diver", 1, r => r.Work("trim", 120)));

        sittings.Select(sitting => sitting.Free).Should().Equal(new FreeTime(60, new FreeBecause.TooShort()), null);
    }

    [Fact]
    public void A_quarter_of_an_hour_is_not_worth_a_word() =>
        Sittings(Workshop.Evenings().Model("Crane", 1, r => r.Work("trim", 165).Rest(5).Photograph())).Should().OnlyContain(sitting => sitting.Free == null);

    [Theory]
    [InlineData(40)]
    [InlineData(150)]
    public void What_the_painter_has_decided_for_later_is_neither_waiting_nor_too_long(int minutes)
    {
        var sittings = Sittings(Workshop.Evenings().Model("Crane", 1, r => r.Work("trim", 40)).Model("Diver", 1, r => r.Work("trim", minutes).At("2026-12-01 19:00")));

        sittings.Select(sitting => sitting.Free).Should().Equal(new FreeTime(140, new FreeBecause.Decided()), null);
    }

    [Fact]
    public void Where_some_pieces_of_a_lot_could_be_done_the_plan_says_which_and_that_nothing_is_won()
    {
        var sittings = Sittings(Workshop.Evenings().Model("Crane", 1, r => r.Work("trim", 135)).Model("Diver", 6, r => r.Photograph(minutes: 10, putAway: 30)));

        sittings.Select(sitting => sitting.Free).Should().Equal(new FreeTime(45, new FreeBecause.CouldBegin("'photograph all areas' on Diver", ForSome: true, WhyNotBegun.NothingFound)), null);
    }

    [Fact]
    public void What_the_bench_allows_in_a_day_is_done()
    {
        var sittings = Sittings(Workshop.Evenings().MostPerDay(60).Model("Crane", 1, r => r.Work("trim", 50)).Model("Diver", 1, r => r.Work("trim", 50)));

        sittings.Select(sitting => sitting.Free).Should().Equal(new FreeTime(130, new FreeBecause.HasShare(IsEven: false)), null);
    }

    [Fact]
    public void What_is_done_later_on_a_day_is_part_of_what_the_bench_allows()
    {
        // 35 before the pause and 25 after it, when the piece has rested; 20 on the other model would fit into either sitting, but not into the day
        var sittings = Sittings(Workshop.In().Weekly("Mon", "18:00", "19:00").Weekly("Mon", "20:00", "21:00").MostPerDay(60)
            .Model("Crane", 1, r => r.Work("trim", 35).Rest(hours: 1).Work("sand", 25)).Model("Diver", 1, r => r.Work("trim", 20)));

        sittings.Select(sitting => sitting.Free).Should().Equal(new FreeTime(25, new FreeBecause.HasShare(false)), new FreeTime(35, new FreeBecause.HasShare(false)), null);
    }

    [Fact]
    public void More_would_not_keep_the_days_even()
    {
        var sittings = Sittings(Workshop.Evenings().Aim(BatchAim.EvenDays, BatchAim.FinishSoon, BatchAim.FewChanges, BatchAim.ShortMasks)
            .Model("Diver", 20, r => r.Work("trim", 15), due: "2026-12-03 22:00"));

        sittings.SkipLast(1).Should().OnlyContain(sitting => sitting.Free == new FreeTime(105, new FreeBecause.HasShare(true)));
    }

    [Fact]
    public void What_is_drying_within_the_sitting_is_left_drying_by_those_who_leave_early()
    {
        // brushed until 19:52 and recoatable at 20:46, and the next coat takes longer than what is left
        var monday = Sittings(Workshop.Evenings().Model("Diver", 1, r => r.Brush(Boot, minutes: 50).Brush(Boot, minutes: 80)))[0];

        monday.Tasks[^1].To.TimeOfDay.Should().Be(new LocalTime(19, 52));
        monday.Drying.Should().ContainSingle().Which.Until.TimeOfDay.Should().Be(new LocalTime(20, 46));
        monday.Free.Should().Be(new FreeTime(128, new FreeBecause.TooShort()));
    }

    private static List<PlannedSitting> Sittings(Workshop workshop) => [.. workshop.Plan().Days.SelectMany(day => day.Sittings)];
}
