using Pipeline.Abstractions;
using static Pipeline.Tests.Units.Planning.RouteSteps;

namespace Pipeline.Tests.Units.Planning;

/// <summary>What is said of a model that is late. From Monday 30 November 18:00, with evenings from 19:00 to 22:00 unless said.</summary>
public class LateWordsTests
{
    private static readonly Paint Undercoat = Pot("slate undercoat", Lacquer);

    [Fact]
    public void The_longest_wait_is_named_and_what_helps_with_it_where_no_sitting_would()
    {
        // masked a day after the undercoat, and due before that
        var finding = Late(Workshop.Evenings().Tool("airbrush", 1).Model(
            "Diver", 1, r => r.Spray(Undercoat, role: LayerRole.Undercoat).Mask("suit", "suit").Unmask("suit"), due: "2026-11-30 21:00"));

        finding.Message.Should().Contain("The longest wait is before 'mask the suit', Tue 1 Dec 19:").And.Contain("It waits for MaskSafe: 'undercoat all areas'").And.NotContain("Last comes");
        finding.Remedy.Should().Be("Choose what dries sooner for 'undercoat all areas', let 'mask the suit' follow at the low drying figure ('pace: brisk') and read what it risks, begin earlier, or move the due time.");
    }

    [Fact]
    public void What_runs_by_itself_is_a_wait_like_any_other()
    {
        var finding = Late(Workshop.Evenings().Model("Diver", 1, r => r.Work("trim", 10).Rest(hours: 290).Work("sand", 10), due: "2026-12-02 22:00"));

        finding.Message.Should().Contain("The longest wait is 'wait all areas'").And.Contain("it takes 12 d 2 h");
        finding.Remedy.Should().Be("Begin earlier, or move the due time.");
    }

    [Fact]
    public void Sittings_are_asked_for_where_hands_are_short()
    {
        var finding = Late(Workshop.Evenings().Model("Diver", 40, r => r.Work("trim", 60), due: "2026-12-01 22:00"));

        finding.Message.Should().Contain("Last comes 'trim all areas'");
        finding.Remedy.Should().StartWith("Add a sitting, begin earlier");
    }

    [Fact]
    public void A_due_time_that_is_past_when_the_plan_begins()
    {
        var finding = Late(Workshop.Evenings().Model("Diver", 1, r => r.Work("trim", 10), due: "2025-06-20 18:00"));

        finding.Message.Should().EndWith("late. That is past when the plan begins, Mon 30 Nov 2026 18:00.").And.Contain(", 75 weeks late");
        finding.Remedy.Should().Be("Move the due time, or plan from an earlier moment.");
    }

    [Theory]
    [InlineData("2026-12-01 18:20", "45 min")] // trimmed from 19:00 to 19:05
    [InlineData("2026-12-01 17:35", "1 h 30 min")]
    [InlineData("2026-11-30 13:00", "6 h 5 min")]
    [InlineData("2026-11-29 13:00", "1 d 6 h")]
    public void How_late_is_said_as_in_the_head_of_the_plan(string due, string said)
    {
        var isFirst = due.StartsWith("2026-11", StringComparison.Ordinal);
        var workshop = (isFirst ? Workshop.Evenings() : Workshop.In().On("2026-12-01", "19:00", "22:00")).Model("Diver", 1, r => r.Work("trim", 5), due: due);

        Late(workshop).Message.Should().Contain($", {said} late.");
    }

    [Fact]
    public void An_hour_that_the_clocks_skip_is_no_hour_late() =>
        // from Fri 26 Mar 20:00 to Mon 29 Mar 19:30, and the clocks go forward on Sunday
        Late(Workshop.In("Europe/Berlin").On("2027-03-29", "19:00", "21:00").Model("Diver", 1, r => r.Work("trim", 30), due: "2027-03-26 20:00"), "2027-03-26 18:00")
            .Message.Should().Contain(", 2 d 22 h late.");

    private static Finding Late(Workshop workshop, string from = "2026-11-30 18:00") => workshop.Plan(from).Findings.Single(finding => finding.Rule == "due-too-soon");
}
