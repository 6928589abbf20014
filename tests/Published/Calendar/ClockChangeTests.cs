using NodaTime;
using NodaTime.Text;
using Pipeline.Planning;
using Pipeline.Workflows;

namespace Pipeline.Tests.Published.Calendar;

/// <summary>
/// The clock-change weekends of two zones after the IANA time zone database: Lisbon goes forward at 01:00 on 29 March 2026 and back at 02:00 on
/// 25 October 2026 (the rule of the European Union, last Sundays at 01:00 UTC); Sydney goes back at 03:00 on 5 April 2026 and forward at 02:00 on
/// 4 October 2026 (first Sundays at 02:00 standard time).
/// </summary>
public class ClockChangeTests
{
    [Theory]
    [InlineData("Europe/Lisbon", "2026-03-28", "23:00", "03:00", 180)]    // an hour is skipped
    [InlineData("Europe/Lisbon", "2026-10-24", "23:00", "03:00", 300)]    // an hour is lived twice
    [InlineData("Europe/Lisbon", "2026-03-27", "23:00", "03:00", 240)]    // the night before is as long as it says
    [InlineData("Australia/Sydney", "2026-04-04", "23:00", "04:00", 360)]
    [InlineData("Australia/Sydney", "2026-10-03", "23:00", "04:00", 240)]
    [InlineData("Australia/Sydney", "2026-10-10", "23:00", "04:00", 300)]
    public void A_sitting_through_the_night_has_its_real_length(string zone, string date, string from, string to, double minutes) =>
        Sittings(zone, date, from, to).Single().Minutes.Should().Be(minutes);

    [Theory]
    [InlineData("Europe/Lisbon", "2026-03-29", "19:00", 18)]      // summer time: an hour earlier in UTC
    [InlineData("Europe/Lisbon", "2026-03-28", "19:00", 19)]
    [InlineData("Europe/Lisbon", "2026-10-25", "19:00", 19)]
    [InlineData("Australia/Sydney", "2026-10-03", "19:00", 9)]
    [InlineData("Australia/Sydney", "2026-10-04", "19:00", 8)]
    [InlineData("Australia/Sydney", "2026-04-05", "19:00", 9)]
    public void An_evening_opens_by_the_wall_clock(string zone, string date, string from, int hourUtc)
    {
        var evening = Sittings(zone, date, from, "21:00").Single();
        evening.Start.InUtc().Hour.Should().Be(hourUtc);
        evening.Minutes.Should().Be(120);
    }

    [Fact]
    public void A_start_in_the_skipped_hour_moves_on_by_the_gap()
    {
        var morning = Sittings("Europe/Lisbon", "2026-03-29", "01:30", "04:00").Single();
        morning.Start.InUtc().LocalDateTime.Should().Be(new LocalDateTime(2026, 3, 29, 1, 30)); // 02:30 summer time
        morning.Minutes.Should().Be(90);
    }

    [Fact]
    public void A_start_in_the_repeated_hour_is_the_earlier_one()
    {
        var morning = Sittings("Europe/Lisbon", "2026-10-25", "01:30", "03:00").Single();
        morning.Minutes.Should().Be(150);
    }

    private static IEnumerable<OpenSitting> Sittings(string zone, string date, string from, string to)
    {
        var day = LocalDatePattern.Iso.Parse(date).Value;
        var clock = LocalTimePattern.CreateWithInvariantCulture("HH:mm");
        var bench = new Bench
        {
            Zone = DateTimeZoneProviders.Tzdb[zone],
            Dated = [new DatedSitting(day, clock.Parse(from).Value, clock.Parse(to).Value, new Abstractions.Place("case", 1, 1))],
            Painters = [new Painter("painter 1", [])],
            Place = new Abstractions.Place("case", 1, 1),
        };
        return OpenSittings.Between(bench, day.PlusDays(-1).AtStartOfDayInZone(bench.Zone).ToInstant(), day.PlusDays(3).AtStartOfDayInZone(bench.Zone).ToInstant());
    }
}
