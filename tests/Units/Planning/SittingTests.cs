using NodaTime;
using Pipeline.Planning;

namespace Pipeline.Tests.Units.Planning;

public class SittingTests
{
    private static string[] Said(Workshop workshop, string from, string until)
    {
        var bench = workshop.Bench;
        return [.. OpenSittings.Between(bench, workshop.At(from), workshop.At(until)).Select(s =>
            FormattableString.Invariant($"{s.Date.Day}: {s.Start.InZone(bench.Zone).TimeOfDay:HH\\:mm}–{s.End.InZone(bench.Zone).TimeOfDay:HH\\:mm}"))];
    }

    [Fact]
    public void Weekdays_and_dates_together_without_the_days_away() =>
        Said(Workshop.In().Weekly("Mon Wed", "19:00", "21:00").On("2026-12-01", "10:00", "11:00").Away("2026-12-02", "2026-12-03"), "2026-11-30 00:00", "2026-12-08 00:00")
            .Should().Equal("30: 19:00–21:00", "1: 10:00–11:00", "7: 19:00–21:00");

    [Fact]
    public void An_extra_sitting_on_a_day_away_is_left_out() =>
        Said(Workshop.In().On("2026-12-02", "10:00", "11:00").Away("2026-12-02", "2026-12-02"), "2026-11-30 00:00", "2026-12-08 00:00").Should().BeEmpty();

    [Fact]
    public void Sittings_that_overlap_or_touch_become_one() =>
        Said(Workshop.In().Weekly("Tue", "19:00", "21:00").On("2026-12-01", "20:00", "22:00").On("2026-12-01", "22:00", "23:00"), "2026-11-30 00:00", "2026-12-02 00:00")
            .Should().Equal("1: 19:00–23:00");

    [Fact]
    public void A_sitting_may_end_after_midnight() =>
        Said(Workshop.In().Weekly("Fri", "22:00", "01:00"), "2026-12-04 00:00", "2026-12-06 00:00").Should().Equal("4: 22:00–01:00");

    [Fact]
    public void From_the_middle_of_a_sitting_its_rest_is_left() =>
        Said(Workshop.In().Weekly("Fri", "22:00", "01:00"), "2026-12-05 00:20", "2026-12-06 00:00").Should().Equal("4: 00:20–01:00");

    [Fact]
    public void A_most_per_day_leaves_the_sittings_as_they_are() =>
        Said(Workshop.In().Weekly("Sat", "10:00", "13:00").Weekly("Sat", "14:00", "18:00").MostPerDay(240), "2026-12-05 00:00", "2026-12-06 00:00")
            .Should().Equal("5: 10:00–13:00", "5: 14:00–18:00");

    // Samoa had no 30 December 2011 (tz database)
    [Fact]
    public void A_sitting_that_the_clocks_move_to_the_next_day_belongs_to_that() =>
        Said(Workshop.In("Pacific/Apia").Weekly("Fri", "10:00", "11:00").Weekly("Sat", "09:00", "09:30").Weekly("Sat", "12:00", "13:00"), "2011-12-29 12:00", "2012-01-01 12:00")
            .Should().Equal("31: 09:00–09:30", "31: 10:00–11:00", "31: 12:00–13:00");

    [Fact]
    public void Work_of_several_sittings_of_a_day_is_no_more_than_the_most_together()
    {
        // 35 before the pause and 50 after it are 85 of 90, though an hour is open before it
        Workshop Crew(double most) => Workshop.In().Weekly("Mon Thu", "19:00", "20:00").Weekly("Mon Thu", "20:30", "22:00").MostPerDay(most)
            .Model("Post", 1, r => r.Work("trim", 35).Work("sand", 50));
        string[] Begun(double most) => [.. Crew(most).Plan().Days.SelectMany(day => day.Sittings).Select(sitting =>
            FormattableString.Invariant($"{sitting.From.Date.Day}. {sitting.From.TimeOfDay:HH\\:mm} {sitting.AttendedMinutes} of {sitting.MostPerDayMinutes}"))];

        Begun(90).Should().Equal("30. 19:00 35 of 90", "30. 20:30 50 of 90");
        Begun(84).Should().Equal("30. 19:00 35 of 84", "3. 19:00 50 of 84");
        Begun(150).Should().Equal("30. 19:00 35 of ", "30. 20:30 50 of ");
    }

    [Fact]
    public void A_sitting_past_midnight_belongs_to_the_day_on_which_it_begins()
    {
        // 90 from 23:00, and on the Sunday itself 60 more
        var plan = Workshop.In().Weekly("Sat", "23:00", "01:00").Weekly("Sun", "10:00", "12:00").MostPerDay(90)
            .Model("Crane", 15, r => r.Work("trim", minutes: 10)).Plan("2026-12-04 12:00");

        plan.Days.Select(day => (day.Date.Day, day.Sittings.Sum(sitting => sitting.AttendedMinutes))).Should().Equal((5, 90), (6, 60));
    }

    [Fact]
    public void A_most_per_day_is_kept_by_the_plan()
    {
        var plan = Workshop.In().Weekly("Mon Tue Wed", "10:00", "18:00").MostPerDay(60).Model("Crane", 10, r => r.Work("trim", minutes: 15)).Plan();
        plan.Days.Should().HaveCountGreaterThanOrEqualTo(3);
        plan.Days.Should().OnlyContain(day => day.Sittings.Sum(s => s.AttendedMinutes) <= 60);
    }

    [Fact]
    public void Nothing_between_a_moment_and_one_before_it() =>
        Said(Workshop.Evenings(), "2026-12-02 00:00", "2026-12-01 00:00").Should().BeEmpty();

    [Fact]
    public void Work_longer_than_the_first_look_ahead_is_planned_all_the_same()
    {
        var plan = Workshop.In().Weekly("Mon", "19:00", "20:00").Model("Fleet", 40, r => r.Work("trim", minutes: 30).Photograph(minutes: 10)).Plan();
        plan.Days.Select(d => d.Date).Should().OnlyContain(date => date.DayOfWeek == IsoDayOfWeek.Monday).And.HaveCountGreaterThan(20);
    }

    [Theory]
    [InlineData(50, "Ana 50 of 150, Rui 50 of 150")] // each is busy in one of the two sittings
    [InlineData(20, "Ana 20 of 150, Rui 20 of 150")] // nothing is done in the second
    public void A_painters_day_is_as_long_as_all_sittings_the_painter_comes_to(double minutes, string said)
    {
        var plan = Workshop.In().Weekly("Mon", "19:00", "20:00").Weekly("Mon", "20:30", "22:00").Painter("Ana", "trim").Painter("Rui", "sand")
            .Model("Post", 1, r => r.Work("trim", minutes).Work("sand", minutes)).Plan();

        string.Join(", ", plan.Days[0].Sittings.Select(sitting => FormattableString.Invariant($"{sitting.Painter} {sitting.AttendedMinutes} of {sitting.DayMinutes}"))).Should().Be(said);
    }
}
