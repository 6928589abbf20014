using Pipeline.Scheduling;
using static Pipeline.Tests.Scheduling.Given;

namespace Pipeline.Tests.Scheduling;

/// <summary>Starts that are decided: the hands begin then, whatever is in the tool; all else goes around them.</summary>
public class PinTests
{
    private static readonly ToolUse Black = new(0, 0);
    private static readonly ToolUse White = new(0, 1);

    [Theory]
    [InlineData(0, 20)]
    [InlineData(20, 0)]
    public void Two_decided_sprays_are_kept_whichever_is_listed_first(long black, long white)
    {
        var problem = Sprays(Task("a", 10) with { Tool = Black, PinnedStart = black }, Task("b", 10) with { Tool = White, PinnedStart = white });
        Plan(problem).Schedule.Runs.OrderBy(run => run.Activity).Select(run => run.Start).Should().Equal(black, white);
    }

    [Fact]
    public void What_a_decided_spray_follows_is_sprayed_before_it_in_another_load()
    {
        var problem = Sprays(Task("ground", 10) with { Tool = Black }, Task("second", 10) with { Tool = White, PinnedStart = 20 });
        var plan = Plan(problem with { Waits = [After(0, 1)] });
        Runs(plan).Should().Be("0x1@0 1x1@20");
        plan.Schedule.Runs[1].CleanOut.Should().Be(5);
        plan.Score.Finish.Should().Be(35);
    }

    [Fact]
    public void Where_the_clean_out_would_make_the_decided_spray_too_long_the_other_load_comes_after()
    {
        var problem = Sprays(Task("free", 10) with { Tool = Black }, Task("decided", 20) with { Tool = White, PinnedStart = 20 }, Task("visitor", 30) with { PinnedStart = 41 });
        Runs(Plan(problem)).Should().Be("1x1@20 2x1@41 0x1@71");
    }

    [Fact]
    public void What_dries_while_the_tool_is_filled_need_not_be_dry_before()
    {
        var problem = Sprays(Task("dry", 0, unattended: 5), Task("decided", 10) with { Tool = Black, PinnedStart = 0 }) with { Tools = [Airbrush(cleanOut: 5, fill: 10)], Waits = [After(0, 1)] };
        Plan(problem).Score.Finish.Should().Be(20);
        Obstacles(problem with { Waits = [After(0, 1, least: 6)] }).Should().Contain(new Obstacle.PinContradicts(1, 0, 1));
    }

    [Fact]
    public void Two_decided_starts_closer_than_the_wait_between_them()
    {
        var problem = Sprays(Task("a", 10) with { Tool = Black, PinnedStart = 0 }, Task("b", 0, unattended: 7) with { PinnedStart = 12 }) with { Tools = [Airbrush(cleanOut: 5, fill: 5)], Waits = [After(0, 1)] };
        Obstacles(problem).Should().Contain(new Obstacle.PinContradicts(1, 0, 3));
    }

    [Fact]
    public void What_dries_by_itself_before_a_decided_start_is_begun_in_time_though_other_work_dries_longer()
    {
        var problem = Problem(
            Worker((0, 50), (200, 300)),
            [Task("clean", 10), Task("dry", 0, unattended: 20), Task("trim", 10) with { PinnedStart = 30 }, Task("glue", 10, unattended: 100)],
            After(0, 1),
            After(1, 2));
        Runs(Plan(problem)).Should().Contain("0x1@0").And.Contain("2x1@30");
    }

    [Fact]
    public void Pinned_where_a_plan_has_them_they_are_planned_again_or_not_found_and_never_called_impossible()
    {
        var planned = 0;
        for (var seed = 0; seed < 400; seed++)
        {
            var problem = RandomProblems.Next(seed);
            if (Search(problem, seed) is not Outcome.Planned plan || Pinned(problem, plan, seed) is not { } pinned)
                continue;
            Auditor.Audit(pinned, plan.Schedule).Should().BeEmpty($"seed {seed}");
            var again = Search(pinned, seed);
            if (again is Outcome.Impossible no)
                no.Obstacles.Should().Contain(new Obstacle.NotFound(), $"seed {seed}: there is a plan");
            else
                ((Outcome.Planned)again).Refused.Should().Be(0, $"seed {seed}");
            planned += again is Outcome.Planned ? 1 : 0;
            BoundFromAfar.Of(pinned, plan.Score.Finish).Should().BeLessThanOrEqualTo(plan.Score.Finish, $"seed {seed}");
        }

        planned.Should().BeGreaterThan(200);
    }

    private static Outcome Search(Problem problem, int seed) =>
        new Search(problem, Effort.Quick, seed, progress: null, keep: null, threads: 1) { MostWork = 10_000 }.Run(CancellationToken.None);

    // Some of what a plan does in one run is decided for when it does it.
    private static Problem? Pinned(Problem problem, Outcome.Planned plan, int seed)
    {
        var random = new Random(seed);
        var share = random.NextDouble();
        var starts = plan.Schedule.Runs.GroupBy(run => run.Activity)
            .Where(runs => runs.Count() == 1 && problem.Activities[runs.Key].Past.IsEmpty && random.NextDouble() < share)
            .ToDictionary(runs => runs.Key, runs => runs.Single().Start);
        return starts.Count == 0 ? null : problem with
        {
            Activities = [.. problem.Activities.Select((activity, a) => starts.TryGetValue(a, out var start) ? activity with { PinnedStart = start } : activity)],
        };
    }

    private static Problem Sprays(params Activity[] activities) => Problem(Worker((0, 100)), activities) with { Tools = [Airbrush(cleanOut: 5)] };
}
