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
        Last(Problem(Worker((0, 50), (200, 300)), [Task("a", 10), Task("b", 10)], After(0, 1, 100))).Should().Be(new Reason.ReadyTooLate(0, new Reason.Waits(0, 0, 0)));

    [Theory]
    [InlineData(30, 0, true)] // the wait is over at 40, and nobody has worked since 10
    [InlineData(30, 38, true)] // at 40, hands have been free for a moment
    [InlineData(25, 38, false)] // at 35: what was left then would have done, had hands been free
    public void What_comes_last_before_too_little_is_left_is_why(long least, long busyUntil, bool isWait)
    {
        // a until 10 and b after it, fifteen ticks long; c in between until the given tick
        var problem = Problem(Worker((0, 50), (200, 300)), [Task("a", 10), Task("b", 15), Task("c", Math.Max(1, busyUntil - 10))], After(0, 1, least));
        Run[] between = busyUntil > 0 ? [Work(2, 10, busyUntil - 10)] : [];
        Run[] later = busyUntil > 0 ? [] : [Work(2, 215, 1)];

        Explained(problem, [Work(0, 0, 10), .. between, Work(1, 200, 15), .. later], of: 1)
            .Should().Be(isWait ? new Reason.ReadyTooLate(0, new Reason.Waits(0, 0, 0)) : new Reason.Closed(0, 1));
    }

    // gloss, lines on it that must be wiped back within 20, and something else to do, until 10, 218, 224 and the given tick
    [Theory]
    [InlineData(100, 11, 0, "wait 0")] // the gloss is dry in the night: room for both before that is no matter
    [InlineData(38, 11, 0, "wait 0")] // at 48, too late for the lines alone
    [InlineData(30, 11, 0, "wait 0 with the wiping")] // at 40, too late for the wiping alone
    [InlineData(30, 38, 0, "wait 0 with the wiping")]
    [InlineData(0, 38, 0, "hands with the wiping")]
    [InlineData(0, 45, 0, "hands")]
    [InlineData(0, 20, 150, "wait 1")] // the wiping waits for something else: the lines are kept close to it
    public void What_must_follow_soon_is_why_only_where_room_for_both_is_short(long dry, long busyUntil, long wiping, string why)
    {
        var problem = Problem(Worker((0, 50), (200, 300)), [Task("gloss", 10), Task("lines", 8), Task("wiping", 6), Task("other", busyUntil - 10)],
            After(0, 1, dry), After(1, 2, 0, greatest: 20), After(0, 2, wiping));
        Explained(problem, [Work(0, 0, 10), Work(3, 10, busyUntil - 10), Work(1, 200, 8), Work(2, 208, 6)], of: 1).Should().Be(why switch
        {
            "wait 0" => new Reason.ReadyTooLate(0, new Reason.Waits(0, 0, 0)),
            "wait 0 with the wiping" => new Reason.ReadyTooLate(0, new Reason.Waits(0, 0, 0), With: 3),
            "wait 1" => new Reason.ReadyTooLate(0, new Reason.Waits(1, 0, 3)),
            "hands" => new Reason.Closed(0, 1),
            _ => new Reason.Closed(0, 1, With: 3),
        });
    }

    [Fact]
    public void Hours_with_room_in_which_the_worker_may_do_no_more() =>
        Explained(Problem(Worker((0, 50), (200, 300)) with { MostPerDay = 30 }, [Task("a", 20), Task("b", 20)]), [Work(0, 0, 20), Work(1, 200, 20)], of: 1)
            .Should().Be(new Reason.HadItsShare(0, 0));

    [Theory]
    [InlineData(40, true)] // the day before has 25, of which 15 in the sitting in which there was room
    [InlineData(45, false)]
    public void A_day_of_two_sittings_in_which_the_worker_may_do_no_more(long most, bool isShare) =>
        Explained(Problem(Days(most, [(0, 50), (60, 100)], [(200, 300)]), [Task("a", 10), Task("b", 15), Task("c", 20)]), [Work(0, 0, 10), Work(1, 60, 15), Work(2, 200, 20)], of: 2)
            .Should().Be(isShare ? new Reason.HadItsShare(0, 1) : new Reason.Nothing());

    [Fact]
    public void What_is_done_later_on_the_same_day_is_not_kept_from_earlier_by_the_day() =>
        Explained(Problem(Days(40, [(0, 50), (60, 100)]), [Task("a", 20), Task("b", 20)]), [Work(0, 0, 20), Work(1, 60, 20)], of: 1).Should().Be(new Reason.Nothing());

    [Fact]
    public void Hours_with_room_are_no_reason() =>
        Explained(Problem(Worker((0, 50), (200, 300)), [Task("a", 20), Task("b", 20)]), [Work(0, 0, 20), Work(1, 200, 20)], of: 1).Should().Be(new Reason.Nothing());

    [Fact]
    public void Hours_too_short_for_it() => Last(Problem(Worker((0, 10), (200, 300)), [Task("a", 20)])).Should().Be(new Reason.Closed(0, -1));

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

        var explanation = new Explanation(new Net(problem), schedule);

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

    private static Run Work(int activity, long start, long ticks) => new(activity, 0, 1, 0, -1, start, 0, 0, ticks, 0);

    // Of an activity in a schedule that is given, not searched.
    private static Reason Explained(Problem problem, Run[] runs, int of)
    {
        var schedule = new Schedule([.. runs], []);
        Auditor.Audit(problem, schedule).Should().BeEmpty();
        return new Explanation(new Net(problem), schedule).Reasons[Array.FindIndex(runs, run => run.Activity == of)];
    }

    private static Reason Last(Problem problem) => Plan(problem).Reasons[^1];
}
