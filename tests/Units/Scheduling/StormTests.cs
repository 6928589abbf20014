using Pipeline.Scheduling;

namespace Pipeline.Tests.Scheduling;

public class StormTests
{
    [Fact]
    public void A_thousand_random_problems_give_schedules_that_the_auditor_passes()
    {
        var planned = 0;
        for (var seed = 0; seed < 1000; seed++)
        {
            var problem = RandomProblems.Next(seed);
            var outcome = Solver.Solve(problem, Effort.Quick, seed);
            if (outcome is Outcome.Planned plan)
            {
                planned++;
                Auditor.Audit(problem, plan.Schedule).Should().BeEmpty($"seed {seed}");
                plan.Refused.Should().Be(0, $"seed {seed}");
                plan.Bound.Finish.Should().BeLessThanOrEqualTo(plan.Score.Finish, $"seed {seed}");
                BoundFromAfar.Of(problem, plan.Score.Finish).Should().BeLessThanOrEqualTo(plan.Score.Finish, $"seed {seed}");
            }
        }

        planned.Should().BeGreaterThan(800);
    }

    // Each was got wrong once by a search with little work.
    [Theory]
    [InlineData(51174)] // a unit already done lets what follows on it wait only so long
    [InlineData(57821)] // one worker's share of a tool's work need not hold the filling
    public void A_problem_that_was_once_got_wrong_is_right(int seed)
    {
        var problem = RandomProblems.Next(seed);
        var plan = new Search(problem, Effort.Quick, seed, progress: null, keep: null, threads: 1) { MostWork = 10_000 }.Run(CancellationToken.None)
            .Should().BeOfType<Outcome.Planned>().Subject;
        Auditor.Audit(problem, plan.Schedule).Should().BeEmpty();
        BoundFromAfar.Of(problem, plan.Score.Finish).Should().BeLessThanOrEqualTo(plan.Score.Finish);
    }

    [Fact]
    public void Two_tools_alike_need_no_clean_out_between_two_loads()
    {
        Activity[] activities = [
            Given.Task("black", 10) with { Tool = new ToolUse(0, 0) },
            Given.Task("white", 10) with { Tool = new ToolUse(0, 1) },
        ];
        var problem = Given.Problem(Given.Worker((0, 100)), activities) with { Tools = [Given.Airbrush(cleanOut: 8, closeDown: 9, count: 2)] };

        Given.Plan(problem).Score.Finish.Should().Be(20);
        BoundFromAfar.Of(problem, 20).Should().Be(20);
    }

    [Fact]
    public void One_of_two_painters_may_still_be_putting_away_when_the_other_is_done()
    {
        var problem = new Problem
        {
            Workers = [Given.Worker((0, 10), (100, 110)), Given.Worker((5, 15), (105, 115))],
            Activities = [Given.Task("a", 5, units: 2) with { PutAway = 3 }],
        };
        Auditor.Audit(problem, new Schedule([new Run(0, 0, 1, 0, -1, 0, 0, 0, 5, 3), new Run(0, 1, 1, 1, -1, 5, 0, 0, 5, 3)], [])).Should().BeEmpty();

        BoundFromAfar.Of(problem, 10).Should().BeLessThanOrEqualTo(10);
    }

    // closing a down is dear, b is not; from a to b costs nothing
    [Fact]
    public void A_session_ends_by_way_of_a_load_that_is_cheaper_to_close_down()
    {
        var tool = new Tool("airbrush", 1, ["a", "b", "c", "d"], [[0, 0, 100, 100], [100, 0, 100, 100], [100, 0, 0, 100], [100, 100, 100, 0]], [1, 1, 1, 1], [40, 1, 40, 40]);
        Activity Spray(string name, long ticks, int load) => Given.Task(name, ticks) with { Tool = new ToolUse(0, load) };
        var problem = Given.Problem(Given.Worker((0, 100), (200, 300), (400, 500)), [Spray("a", 90, 0), Spray("b", 8, 1), Spray("c", 90, 2), Spray("b", 8, 1), Spray("d", 10, 3)])
            with
        { Tools = [tool] };
        var known = new Schedule(
            [
                new Run(0, 0, 1, 0, 0, 0, 1, 0, 90, 0),
                new Run(1, 0, 1, 0, 0, 91, 0, 0, 8, 0),
                new Run(2, 0, 1, 0, 0, 200, 1, 0, 90, 0),
                new Run(3, 0, 1, 0, 0, 291, 0, 0, 8, 0),
                new Run(4, 0, 1, 0, 0, 400, 1, 0, 10, 0),
            ],
            [new CloseDown(0, 0, 1, 0, 99, 1), new CloseDown(0, 0, 1, 0, 299, 1), new CloseDown(0, 0, 3, 0, 411, 40)]);
        Auditor.Audit(problem, known).Should().BeEmpty();

        BoundFromAfar.Of(problem, 411).Should().BeLessThanOrEqualTo(411);
    }

    [Fact]
    public void What_was_finished_before_the_beginning_was_in_time()
    {
        var done = Given.Task("a", 10) with { Past = [new Run(0, 0, 1, 0, -1, -50, 0, 0, 10, 0)] };
        Given.Plan(Given.Problem(Given.Worker((0, 100)), [done]) with { Dues = [new Due(0, -20, 1, 0, IsHard: true)] }).Score.Finish.Should().Be(-40);
    }
}
