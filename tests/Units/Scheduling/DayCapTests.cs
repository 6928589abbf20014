using Pipeline.Scheduling;
using static Pipeline.Tests.Scheduling.Given;

namespace Pipeline.Tests.Scheduling;

/// <summary>Of all sittings of a day together no more than the cap is work, however they share it; how long they are open does not matter.</summary>
public class DayCapTests
{
    private static readonly (long, long)[] Monday = [(0, 60), (90, 180)];
    private static readonly (long, long)[] Thursday = [(1000, 1060), (1090, 1180)];

    [Theory]
    [InlineData(90, "0x1@0 1x1@90")] // 35 and 50 are 85, though 60 minutes are open before the second sitting
    [InlineData(85, "0x1@0 1x1@90")]
    [InlineData(84, "0x1@0 1x1@1000")]
    public void What_is_worked_counts_and_not_what_is_open(long most, string runs) =>
        Runs(Plan(Problem(Days(most, Monday, Thursday), [Task("trim", 35), Task("photograph", 50)], After(0, 1)))).Should().Be(runs);

    [Fact]
    public void A_lot_goes_on_in_the_second_sitting_until_the_day_has_its_work() =>
        Runs(Plan(Problem(Days(90, Monday, Thursday), [Task("trim", 20, units: 6)]))).Should().Be("0x3@0 0x1@90 0x2@1000");

    [Fact]
    public void Days_of_one_sitting_each_have_the_cap_each() =>
        Runs(Plan(Problem(Worker((0, 60), (90, 180)) with { MostPerDay = 40 }, [Task("trim", 20, units: 4)]))).Should().Be("0x2@0 0x2@90");

    [Theory]
    [InlineData(54, 90)] // two and twenty, and five to close it down, in each of the sittings
    [InlineData(53, 1000)]
    public void Filling_and_closing_down_count_in_every_sitting_of_the_day(long most, long second)
    {
        Activity Spray(string name) => Task(name, 20) with { Tool = new ToolUse(0, 0) };
        var problem = Problem(Days(most, Monday, Thursday), [Spray("base"), Spray("top")], After(0, 1, least: 50)) with { Tools = [Airbrush(cleanOut: 8, fill: 2, closeDown: 5)] };

        Runs(Plan(problem)).Should().Be($"0x1@0 1x1@{second}");
    }

    [Theory]
    [InlineData(60, 90)]
    [InlineData(59, 1000)]
    public void What_was_done_in_a_sitting_before_counts(long most, long start)
    {
        var done = Task("trim", 20, units: 2) with { Past = [new Run(0, 0, 1, 0, -1, 5, 0, 0, 20, 0)] };
        var problem = Problem(Days(most, Monday, Thursday), [done, Task("sand", 20) with { NotBefore = 90 }], After(0, 1, scope: Scope.WholeLot));

        Plan(problem).Schedule.Runs[^1].Start.Should().Be(start);
    }

    [Fact]
    public void A_friend_has_a_day_of_his_own()
    {
        var problem = Problem(Days(60, Monday, Thursday), [Task("trim", 60), Task("sand", 60)]);

        Plan(problem with { Workers = [problem.Workers[0], problem.Workers[0] with { Name = "friend" }] }).Score.Finish.Should().Be(60);
    }

    [Fact]
    public void A_day_of_work_too_long_for_the_cap_is_not_blamed_on_the_hours()
    {
        Obstacles(Problem(Days(30, Monday), [Task("trim", 40, setUp: 5)])).Should().Equal(new Obstacle.FitsNoDay(0, 45, 30));
        Obstacles(Problem(Days(80, Monday), [Task("trim", 95)])).Should().Equal(new Obstacle.FitsNoInterval(0, 95, 90), new Obstacle.FitsNoDay(0, 95, 80));
    }

    [Fact]
    public void A_day_does_not_go_on_after_another_has_begun()
    {
        var act = () => Days(60, [(0, 60), (200, 260)], [(90, 180)]);
        act.Should().Throw<ArgumentException>().WithMessage("The day of interval 2 goes on*");
    }

    [Fact]
    public void Days_are_counted_in_order_of_time_whatever_the_order_they_are_told_in() =>
        Days(60, Thursday, Monday).Open.Day.Should().Equal(0, 0, 1, 1);

    [Fact]
    public void It_is_proved_that_no_plan_does_more_in_a_day()
    {
        // four of five days, and in the last at least one piece
        var days = Enumerable.Range(0, 5).Select(d => Monday.Select(o => (o.Item1 + (d * 1000), o.Item2 + (d * 1000))).ToArray()).ToArray();
        var plan = Plan(Problem(Days(60, days), [.. Enumerable.Range(0, 10).Select(i => Task($"{i}", 20))]));

        plan.Score.Finish.Should().Be(3020);
        plan.Bound.Finish.Should().Be(3020);
    }

    [Fact]
    public void No_plan_beats_a_second_opinion_and_no_bound_is_above_it()
    {
        var best = 0;
        for (var seed = 0; seed < 60; seed++)
        {
            var problem = seed % 2 == 0 ? SecondOpinions.Week(seed) : SecondOpinions.Lots(seed);
            problem = problem with { Workers = [Days(new Random(seed).Next(50, 110), [.. problem.Workers[0].Open.Open.Chunk(2).Select(day => day.Select(o => (o.Start, o.End)).ToArray())])] };
            var second = SecondOpinions.Of(problem);
            if (Solver.Solve(problem, Effort.Quick, seed) is not Outcome.Planned plan)
            {
                second.Should().BeNull($"seed {seed}");
                continue;
            }

            second.Should().NotBeNull($"seed {seed}").And.BeLessThanOrEqualTo(plan.Score.Finish, $"seed {seed}");
            BoundFromAfar.Of(problem, plan.Score.Finish).Should().BeLessThanOrEqualTo(second!.Value, $"seed {seed}");
            best += plan.Score.Finish == second ? 1 : 0;
        }

        best.Should().BeGreaterThan(50);
    }
}
