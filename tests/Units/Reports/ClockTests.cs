using NodaTime;
using Pipeline.Planning;
using Pipeline.Reports;
using static Pipeline.Tests.Units.Reports.Harbour;
using TextStyle = Pipeline.Reports.TextStyle;

namespace Pipeline.Tests.Units.Reports;

/// <summary>The night of 25 October 2026, in which Lisbon's clocks go back from 02:00 WEST to 01:00 WET (IANA time zone database).</summary>
public class ClockTests
{
    private const string Remark = "The clocks go back on Sun 25 Oct: 01:00 to 02:00 comes twice, first as WEST, then as WET.";

    [Theory]
    [InlineData(0, 59, "01:59 WEST")]
    [InlineData(0, 0, "01:00 WEST")]
    [InlineData(1, 0, "01:00 WET")]
    [InlineData(1, 59, "01:59 WET")]
    public void Of_an_hour_that_comes_twice_it_is_said_which(int hour, int minute, string said)
    {
        var plan = Ready(Instant.FromUtc(2026, 10, 25, hour, minute));

        PlanText.Render(plan, TextStyle.Plain).ReplaceLineEndings(" ").Should().Contain($"ready by Sun 25 Oct {said};").And.Contain(Remark);
        PlanMarkdown.Render(plan).Should().Contain($"ready by Sun 25 Oct {said};").And.Contain(Remark);
    }

    [Theory]
    [InlineData(24, 23, 59, "Sun 25 Oct 00:59")]
    [InlineData(25, 2, 0, "Sun 25 Oct 02:00")]
    [InlineData(26, 1, 30, "Mon 26 Oct 01:30")]
    public void Of_any_other_time_nothing_more(int day, int hour, int minute, string said)
    {
        var text = PlanText.Render(Ready(Instant.FromUtc(2026, 10, day, hour, minute)), TextStyle.Plain).ReplaceLineEndings(" ");

        text.Should().Contain($"ready by {said};").And.NotContainAny("WEST", "WET", "clocks");
    }

    [Fact]
    public void The_two_are_told_apart_at_tasks_and_waits_and_in_json()
    {
        var from = Instant.FromUtc(2026, 10, 25, 0, 8).InZone(Zone);
        var to = Instant.FromUtc(2026, 10, 25, 0, 36).InZone(Zone);
        var task = Task("24 Oct 23:00-23:30", "Gig 1-1/1", "Photograph the hull") with
        {
            From = from,
            To = to,
            Starts = [new WaitStarted("handleable", to, Instant.FromUtc(2026, 10, 25, 1, 20).InZone(Zone), IsDefault: false)],
        };
        var plan = Empty with { Days = [Day(Sitting("24 Oct 22:00-23:50", task))] };

        var text = PlanText.Render(plan, TextStyle.Plain);
        text.Should().Contain("[ ] 01:08 WEST  Photograph the hull").And.Contain("Sun 01:36 WEST").And.Contain("better Sun 01:20 WET").And.Contain("28 min");
        PlanMarkdown.Render(plan).Should().Contain("**01:08 WEST** Photograph the hull");
        PlanJson.Render(plan).Replace("\\u002B", "+", StringComparison.Ordinal).Should().Contain("2026-10-25T01:36:00+01:00").And.Contain("2026-10-25T01:20:00Z");
    }

    private static Plan Ready(Instant instant) =>
        Empty with { Finishes = [new ModelFinish("Gig", "Harbour", 1, instant.InZone(Zone), instant.InZone(Zone), null, null)] };
}
