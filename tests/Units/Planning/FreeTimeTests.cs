using Pipeline.Planning;

namespace Pipeline.Tests.Units.Planning;

/// <summary>Why a sitting is left early although something is still to be done. Evenings from 19:00 to 22:00.</summary>
public class FreeTimeTests
{
    [Fact]
    public void Where_everything_that_is_left_has_to_wait_the_evening_is_free_and_the_plan_says_so()
    {
        var sittings = Sittings(Workshop.Evenings().Model("Crane", 1, r => r.Work("trim", 60).Rest(5).Photograph()));

        sittings.Select(sitting => sitting.Free).Should().Equal(new FreeTime(120, FreeBecause.AllWaits), null);
    }

    [Fact]
    public void What_is_kept_free_of_every_sitting_is_not_counted() =>
        Sittings(Workshop.Evenings().Slack(15).Model("Crane", 1, r => r.Work("trim", 60).Rest(5).Photograph()))[0].Free!.Minutes.Should().Be(93);

    [Fact]
    public void What_is_ready_may_take_longer_than_is_left()
    {
        var sittings = Sittings(Workshop.Evenings().Model("Crane", 1, r => r.Work("trim", 100)).Model("Diver", 1, r => r.Work("trim", 120)));

        sittings.Select(sitting => sitting.Free).Should().Equal(new FreeTime(60, FreeBecause.TooShort), null);
    }

    [Fact]
    public void A_quarter_of_an_hour_is_not_worth_a_word() =>
        Sittings(Workshop.Evenings().Model("Crane", 1, r => r.Work("trim", 165).Rest(5).Photograph())).Should().OnlyContain(sitting => sitting.Free == null);

    [Fact]
    public void An_evening_that_could_have_been_used_is_not_explained_away()
    {
        // the painter has decided that the diver comes on Tuesday
        var sittings = Sittings(Workshop.Evenings().Model("Crane", 1, r => r.Work("trim", 40)).Model("Diver", 1, r => r.Work("trim", 40).At("2026-12-01 19:00")));

        sittings.Should().HaveCount(2).And.OnlyContain(sitting => sitting.Free == null);
    }

    [Fact]
    public void A_long_task_the_painter_has_decided_for_a_later_evening_is_not_called_too_long()
    {
        var sittings = Sittings(Workshop.Evenings().Model("Crane", 1, r => r.Work("trim", 40)).Model("Diver", 1, r => r.Work("trim", 150).At("2026-12-01 19:00")));

        sittings.Should().HaveCount(2).And.OnlyContain(sitting => sitting.Free == null);
    }

    [Fact]
    public void Where_one_piece_of_a_lot_could_be_begun_the_evening_is_not_explained_away()
    {
        var sittings = Sittings(Workshop.Evenings().Model("Crane", 1, r => r.Work("trim", 135)).Model("Diver", 6, r => r.Photograph(minutes: 10, putAway: 30)));

        sittings.Should().HaveCount(2).And.OnlyContain(sitting => sitting.Free == null);
    }

    private static List<PlannedSitting> Sittings(Workshop workshop) => [.. workshop.Plan().Days.SelectMany(day => day.Sittings)];
}
