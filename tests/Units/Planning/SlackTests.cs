using Pipeline.Abstractions;
using Pipeline.Planning;
using static Pipeline.Tests.Units.Planning.RouteSteps;

namespace Pipeline.Tests.Units.Planning;

/// <summary>A sitting filled to the brim has no room for what takes longer: a part of each stays free (common practice).</summary>
public class SlackTests
{
    private static readonly Paint Undercoat = Pot("slate undercoat", Lacquer, "#4a4f55");

    private static Workshop Crew(double slackPercent, string? due = null) => Workshop.In().Weekly("Mon Tue Wed Thu Fri", "19:00", "20:00")
        .Slack(slackPercent).Model("Diver", 18, r => r.Clean().Spray(Undercoat).Photograph(), due);

    private static IEnumerable<PlannedSitting> Sittings(Plan plan) => plan.Days.SelectMany(day => day.Sittings);

    [Fact]
    public void The_end_of_each_sitting_stays_free()
    {
        var sittings = Sittings(Crew(slackPercent: 15).Plan()).ToList();
        sittings.Should().OnlyContain(sitting => sitting.AttendedMinutes <= 51);
        sittings.Should().OnlyContain(sitting => sitting.To - sitting.From == NodaTime.Duration.FromHours(1), "the sitting itself is as long as the file says");
        Crew(slackPercent: 15).Plan().Findings.Should().BeEmpty();
    }

    [Fact]
    public void Without_slack_the_sittings_are_filled_and_nothing_is_said()
    {
        Sittings(Crew(slackPercent: 0).Plan()).Should().Contain(sitting => sitting.AttendedMinutes > 51);
        Crew(slackPercent: 0).Plan().Findings.Should().BeEmpty();
    }

    [Fact]
    public void A_due_time_comes_before_slack_and_the_plan_says_so()
    {
        var earliest = Crew(slackPercent: 0).Plan().Finishes.Single().Ready;
        var due = earliest.LocalDateTime.ToString("uuuu-MM-dd HH:mm", System.Globalization.CultureInfo.InvariantCulture);
        Crew(slackPercent: 15).Plan().Finishes.Single().Ready.ToInstant().Should().BeGreaterThan(earliest.ToInstant(), "or the case shows nothing");

        var plan = Crew(slackPercent: 15, due).Plan();

        plan.Finishes.Single().Ready.Should().Be(earliest);
        plan.Findings.Should().ContainSingle().Which.Level.Should().Be(Level.Warning);
        plan.Findings[0].Message.Should().Contain("more than 85 % full");
    }

    [Fact]
    public void A_step_that_fits_no_sitting_otherwise_may_use_all_of_it() =>
        Workshop.In().Weekly("Mon Tue Wed", "19:00", "19:23").Slack(15).Model("Diver", 1, r => r.Clean().Spray(Undercoat)).Outcome()
            .Should().BeOfType<PlanOutcome.Planned>();
}
