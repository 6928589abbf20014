using Pipeline.Scheduling;
using static Pipeline.Tests.Scheduling.Given;

namespace Pipeline.Tests.Scheduling;

/// <summary>Every run knows the one thing that keeps it from starting earlier.</summary>
public class ReasonTests
{
    [Fact]
    public void A_wait() =>
        Last(Problem(Worker((0, 100)), [Task("a", 10), Task("b", 10)], After(0, 1, 30))).Should().Be(new Reason.Waits(0, 0, 0));

    [Fact]
    public void Busy_hands() =>
        Last(Problem(Worker((0, 100)), [Task("a", 10), Task("b", 10)], After(0, 1, -5))).Should().Be(new Reason.WorkerBusy(0, 0));

    [Fact]
    public void Closed_hours_after_a_wait_that_ended_in_the_night() =>
        Last(Problem(Worker((0, 50), (200, 300)), [Task("a", 10), Task("b", 10)], After(0, 1, 100))).Should().Be(new Reason.Closed(0, 0));

    [Fact]
    public void Closed_hours_because_too_little_was_left() =>
        Last(Problem(Worker((0, 50), (200, 300)), [Task("a", 30), Task("b", 40)], After(0, 1, -1))).Should().Be(new Reason.Closed(0, 0));

    [Fact]
    public void A_pin() => Last(Problem(Worker((0, 100)), [Task("a", 10) with { PinnedStart = 40 }])).Should().Be(new Reason.Pinned());

    [Fact]
    public void Not_before() => Last(Problem(Worker((0, 100)), [Task("a", 10) with { NotBefore = 40 }])).Should().Be(new Reason.NotBefore());

    [Fact]
    public void A_full_place() =>
        Last(Problem(Worker((0, 100)), [Task("a", 10, unattended: 20) with { Places = [new PlaceUse(0, 1, 0)] }, Task("b", 10) with { Places = [new PlaceUse(0, 1, 0)], NotBefore = 5 }])
            with
        { Places = [new Place("rack", 1)], Dues = [new Due(0, 0)] }).Should().Be(new Reason.PlaceFull(0, 0));

    [Fact]
    public void A_place_that_was_full_the_evening_before()
    {
        // b could follow a in the first sitting, were it not for the rack
        var plan = Plan(Problem(Worker((0, 100), (200, 300)), [Task("a", 10, unattended: 120) with { Places = [new PlaceUse(0, 1, 0)] }, Task("b", 10) with { Places = [new PlaceUse(0, 1, 0)] }])
            with
        { Places = [new Place("rack", 1)], Dues = [new Due(0, 0)] });

        plan.Schedule.Runs.Single(run => run.Activity == 1).Start.Should().Be(200);
        plan.Reasons[^1].Should().Be(new Reason.PlaceFull(0, 0));
    }

    [Fact]
    public void Hands_that_close_a_tool_down()
    {
        var problem = Problem(Worker((0, 100)), [Task("spray", 10) with { Tool = new ToolUse(0, 0) }, Task("wash", 10)], After(0, 1, least: 5)) with { Tools = [Airbrush(cleanOut: 5, closeDown: 12)] };
        var schedule = new Schedule([new Run(0, 0, 1, 0, 0, 0, 0, 0, 10, 0), new Run(1, 0, 1, 0, -1, 22, 0, 0, 10, 0)], [new CloseDown(0, 0, 0, 0, 10, 12)]);
        Auditor.Audit(problem, schedule).Should().BeEmpty();

        var explanation = new Explanation(new Net(problem), schedule, isKept: false);

        explanation.Reasons[1].Should().Be(new Reason.ClosingDown(0, 0));
        explanation.CriticalRuns().Should().Equal(0, 1);
    }

    [Fact]
    public void A_tool_in_other_hands() =>
        Last(Problem(Worker((0, 100)), [Task("a", 10) with { Tool = new ToolUse(0, 0), Workers = [0] }, Task("b", 10) with { Tool = new ToolUse(0, 0), Workers = [1], NotBefore = 2 }])
            with
        { Workers = [Worker((0, 100)), Worker((0, 100))], Tools = [Airbrush(5)] }).Should().Be(new Reason.ToolHeld(0, 0));

    [Fact]
    public void The_critical_chain_runs_from_the_first_cause_to_the_last_finish() =>
        Plan(Problem(Worker((0, 100)), [Task("a", 10), Task("b", 10), Task("c", 5) with { NotBefore = 60 }, Task("d", 10)], After(0, 1, 30), After(1, 3, 40)))
            .CriticalRuns.Should().Equal(0, 1, 3);

    [Fact]
    public void Slack_is_what_the_waits_and_the_finish_leave()
    {
        var plan = Plan(Problem(Worker((0, 100)), [Task("a", 10), Task("b", 10)], After(0, 1, 30)) with { Dues = [new Due(1, 60)] });
        plan.Finishes.Should().Equal(new ActivityFinish(0, 10, 0), new ActivityFinish(1, 50, 0));
    }

    private static Reason Last(Problem problem) => Plan(problem).Reasons[^1];
}
