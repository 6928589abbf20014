using Pipeline.Scheduling;
using static Pipeline.Tests.Scheduling.Given;

namespace Pipeline.Tests.Scheduling;

/// <summary>Each kind of constraint alone, in a problem small enough to see the answer.</summary>
public class ConstraintTests
{
    [Fact]
    public void Work_that_does_not_fit_into_what_is_left_of_a_sitting_waits_for_the_next() =>
        Plan(Problem(Worker((0, 100), (200, 300)), [Task("long", 70), Task("longer", 80)])).Score.Finish.Should().BeOneOf(270, 280);

    [Fact]
    public void A_lot_is_parted_between_units_and_pays_its_set_up_again()
    {
        var plan = Plan(Problem(Worker((0, 100), (200, 300)), [Task("coat", 30, units: 5, setUp: 10)]));
        Runs(plan).Should().Be("0x3@0 0x2@200");
        plan.Score.Finish.Should().Be(270);
    }

    [Fact]
    public void A_lot_that_must_not_be_parted_waits_for_a_long_sitting() =>
        Runs(Plan(Problem(Worker((0, 100), (200, 400)), [Task("coat", 30, units: 5) with { MayBeParted = false }]))).Should().Be("0x5@200");

    [Fact]
    public void Units_done_together_take_the_time_once() =>
        Plan(Problem(Worker((0, 100)), [Task("bath", 30, units: 50) with { Together = true }])).Score.Finish.Should().Be(30);

    [Fact]
    public void Putting_away_belongs_into_the_sitting_but_not_to_the_finish()
    {
        var problem = Problem(Worker((0, 50), (100, 200)), [Task("coat", 45) with { PutAway = 10 }]);
        Runs(Plan(problem)).Should().Be("0x1@100");
        Plan(problem).Score.Finish.Should().Be(145);
    }

    [Fact]
    public void What_runs_by_itself_runs_on_through_closed_hours() =>
        Plan(Problem(Worker((0, 50), (200, 250)), [Task("coat", 10, unattended: 120), Task("next", 10)], After(0, 1))).Score.Finish.Should().Be(210);

    [Fact]
    public void A_wait_unit_by_unit_lets_the_first_unit_go_on_early() =>
        Plan(Problem(Worker((0, 1000)), [Task("coat", 10, units: 5), Task("next", 10, units: 5)], After(0, 1, 40))).Score.Finish.Should().Be(100);

    [Fact]
    public void A_wait_for_the_whole_lot_counts_from_the_last_unit() =>
        Plan(Problem(Worker((0, 1000)), [Task("coat", 10, units: 5), Task("next", 10, units: 5)], After(0, 1, 40, scope: Scope.WholeLot))).Score.Finish
            .Should().Be(140);

    [Theory]
    [InlineData(Edge.Start, Edge.Start, 120)]
    [InlineData(Edge.Finish, Edge.Start, 130)]
    [InlineData(Edge.Start, Edge.Finish, 100)]
    [InlineData(Edge.Finish, Edge.Finish, 110)]
    public void A_wait_is_measured_between_the_edges_it_names(Edge from, Edge to, long finish) =>
        Plan(Problem(Worker((0, 1000)), [Task("a", 10), Task("b", 20)], new Wait(0, from, 1, to, 100, null))).Score.Finish.Should().Be(finish);

    [Fact]
    public void A_greatest_wait_holds_the_earlier_step_back_until_both_fit()
    {
        // b may come at most 20 after a, and fits only into the second sitting
        var plan = Plan(Problem(Worker((0, 50), (200, 300)), [Task("a", 10), Task("b", 60)], After(0, 1, 5, 20)));
        plan.Schedule.Runs[0].Start.Should().BeGreaterThanOrEqualTo(200);
        plan.Score.Finish.Should().Be(275);
    }

    [Fact]
    public void A_greatest_wait_over_a_lot_sends_it_through_in_smaller_lots()
    {
        var plan = Plan(Problem(Worker((0, 1000)), [Task("wash", 10, units: 6), Task("clean back", 10, units: 6)], After(0, 1, 0, 25)));
        plan.Score.Finish.Should().Be(120);
        plan.Schedule.Runs.Count(r => r.Activity == 0).Should().BeGreaterThan(1);
    }

    // masks put on over two evenings, one pass over the tray, masks pulled off again
    [Fact]
    public void A_greatest_wait_over_a_step_done_together_parts_what_is_done_one_by_one()
    {
        var plan = Plan(Problem(
            Worker((0, 120), (1000, 1120), (2000, 2120)),
            [Task("mask", 40, units: 4), Task("spray", 10, units: 4) with { Together = true }, Task("unmask", 5, units: 4)],
            After(0, 1),
            After(1, 2, 30),
            After(0, 2, 0, 1100)));
        Runs(plan).Should().Be("0x3@0 0x1@1000 1x4@1040 2x4@1080");
    }

    [Fact]
    public void Steps_with_one_load_are_brought_together()
    {
        var problem = Problem(Worker((0, 1000)), [.. Enumerable.Range(0, 6).Select(i => Task($"{i}", 10) with { Tool = new ToolUse(0, i % 2) })])
            with
        { Tools = [Airbrush(cleanOut: 15, fill: 5)] };
        Plan(problem).Score.Finish.Should().Be(5 + 15 + 60);
    }

    [Fact]
    public void A_tool_is_closed_down_before_the_sitting_ends_and_filled_again_in_the_next()
    {
        var problem = Problem(Worker((0, 50), (100, 150)), [Task("a", 40) with { Tool = new ToolUse(0, 0) }, Task("b", 30) with { Tool = new ToolUse(0, 0) }])
            with
        { Tools = [Airbrush(cleanOut: 15, fill: 2, closeDown: 8)] };
        var plan = Plan(problem);
        plan.Schedule.CloseDowns.Should().HaveCount(2);
        plan.Schedule.Runs.Should().OnlyContain(r => r.CleanOut == 2);
    }

    [Fact]
    public void Two_tools_alike_hold_two_loads()
    {
        var problem = Problem(Worker((0, 1000)), [.. Enumerable.Range(0, 6).Select(i => Task($"{i}", 10) with { Tool = new ToolUse(0, i % 2) })],
            [.. Enumerable.Range(0, 5).Select(i => After(i, i + 1))]) with
        { Tools = [Airbrush(cleanOut: 15, count: 2)] };
        Plan(problem).Score.Finish.Should().Be(60);
    }

    // each that is taken out has to be cleaned and put away before the evening is over
    [Fact]
    public void Of_two_tools_alike_the_second_is_taken_only_where_that_is_worth_its_close_down()
    {
        var problem = Problem(Worker((0, 90), (200, 290)), [Task("a", 30) with { Tool = new ToolUse(0, 0) }, Task("b", 30) with { Tool = new ToolUse(0, 1) }]) with
        { Tools = [Airbrush(cleanOut: 10, fill: 5, closeDown: 12, count: 2)] };
        Plan(problem).Score.Finish.Should().Be(75);
    }

    [Fact]
    public void A_full_place_makes_the_next_unit_wait()
    {
        var problem = Problem(Worker((0, 1000)), [Task("coat", 10, units: 4, unattended: 90) with { Places = [new PlaceUse(0, 1, 0)] }])
            with
        { Places = [new Place("rack", 2)] };
        // units at 0 and 10, then at 100 and 110
        Plan(problem).Score.Finish.Should().Be(210);
    }

    [Fact]
    public void Two_workers_share_the_work()
    {
        var problem = Problem(Worker((0, 100)), [Task("a", 30), Task("b", 30)]);
        Plan(problem with { Workers = [problem.Workers[0], problem.Workers[0] with { Name = "second" }] }).Score.Finish.Should().Be(30);
    }

    [Fact]
    public void Only_those_who_may_do_it_do_it()
    {
        var problem = Problem(Worker((0, 100)), [Task("a", 30) with { Workers = [1] }, Task("b", 30) with { Workers = [1] }]);
        var plan = Plan(problem with { Workers = [problem.Workers[0], problem.Workers[0] with { Name = "second" }] });
        plan.Schedule.Runs.Should().OnlyContain(r => r.Worker == 1);
        plan.Score.Finish.Should().Be(60);
    }

    [Fact]
    public void A_cap_leaves_part_of_the_sitting_free() =>
        Runs(Plan(Problem(Worker((0, 100), (200, 300)) with { MostPerDay = 50 }, [Task("a", 20, units: 4)]))).Should().Be("0x2@0 0x2@200");

    [Fact]
    public void A_pinned_step_stays_where_it_is_and_the_rest_goes_around_it() =>
        Plan(Problem(Worker((0, 100)), [Task("a", 30), Task("b", 40) with { PinnedStart = 35 }, Task("c", 20)])).Schedule.Runs
            .Single(r => r.Activity == 1).Start.Should().Be(35);

    [Fact]
    public void A_pinned_step_takes_another_tool_where_the_one_made_ready_comes_free_too_late()
    {
        var black = new ToolUse(0, 0);
        var problem = Problem(Worker((0, 100)), [Task("a", 20) with { Tool = black, PinnedStart = 0 }, Task("b", 20) with { Tool = black, PinnedStart = 25 }])
            with
        { Tools = [Airbrush(cleanOut: 15, fill: 10, count: 2)], Workers = [Worker((0, 100)), Worker((0, 100))] };

        Plan(problem).Schedule.Runs.Select(run => run.Start).Should().Equal(0, 25);
    }

    [Fact]
    public void Nothing_starts_before_it_may() =>
        Runs(Plan(Problem(Worker((0, 100)), [Task("a", 30, setUp: 5) with { NotBefore = 20 }]))).Should().Be("0x1@20");

    [Fact]
    public void What_has_happened_stays_and_the_rest_follows_on_it()
    {
        var past = new Run(0, 0, 2, 0, -1, -50, 0, 0, 20, 0);
        var plan = Plan(Problem(Worker((0, 100)), [Task("a", 10, units: 3) with { Past = [past] }, Task("b", 10, units: 3)], After(0, 1, 45)));
        plan.Schedule.Runs[0].Should().Be(past);
        plan.Score.Finish.Should().Be(65);
    }

    [Fact]
    public void The_weightier_due_time_is_met_first()
    {
        var problem = Problem(Worker((0, 1000)), [Task("a", 50), Task("b", 50)]) with { Dues = [new Due(0, 50, 1), new Due(1, 50, 3)] };
        var plan = Plan(problem);
        plan.Score.Lateness.Should().Be(50);
        Runs(plan).Should().Be("1x1@0 0x1@50");
    }
}
