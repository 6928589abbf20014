using System.Collections.Immutable;
using Pipeline.Scheduling;
using static Pipeline.Tests.Scheduling.Given;

namespace Pipeline.Tests.Scheduling;

/// <summary>Everything as early as it can be in its sitting and in the order it has.</summary>
public class PressedTests
{
    private static readonly Problem Bench = Problem(
        Worker((0, 100), (200, 300)),
        [Task("spray", 10) with { Tool = new ToolUse(0, 0) }, Task("wash", 10), Task("ready", 0), Task("varnish", 10)],
        After(0, 1, least: 12),
        After(1, 2)) with
    { Tools = [Airbrush(cleanOut: 5, closeDown: 12)] };

    private static readonly Schedule Loose = new(
        [Of(0, 5, 10, tool: 0), Of(1, 60, 10), Of(2, 150, 0, worker: -1), Of(3, 250, 10)],
        [new CloseDown(0, 0, 0, 0, 30, 12)]);

    [Fact]
    public void Hands_go_from_one_task_to_the_next_and_what_needs_none_is_done_as_soon_as_can_be()
    {
        var pressed = Pressed.Of(new Net(Bench), Loose);

        Auditor.Audit(Bench, pressed).Should().BeEmpty();
        pressed.Runs.Select(run => (run.Activity, run.Start)).Should().Equal((0, 0), (1, 22), (2, 32), (3, 200));
        pressed.CloseDowns.Single().Start.Should().Be(10);
    }

    [Fact]
    public void What_is_pinned_or_takes_places_stays()
    {
        ImmutableArray<PlaceUse> rack = [new PlaceUse(0, 1, 0)];
        var problem = Bench with
        {
            Places = [new Place("rack", 1)],
            Activities = [.. Bench.Activities.Select((a, i) => i == 1 ? a with { Places = rack } : i == 3 ? a with { Places = rack, PinnedStart = 250 } : a)],
        };

        Pressed.Of(new Net(problem), Loose).Runs.Select(run => run.Start).Should().Equal(0, 60, 70, 250);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void No_schedule_gets_worse_by_it(bool isShared)
    {
        for (var seed = 0; seed < 60; seed++)
        {
            var problem = ExactTests.Bench(seed, isShared);
            var net = new Net(problem);
            if (!ExactBatch.Covers(net) || Solver.Solve(problem, Effort.Quick, seed) is not Outcome.Planned plan)
                continue;
            var pressed = Pressed.Of(net, plan.Schedule);

            Auditor.Audit(problem, pressed).Should().BeEmpty($"seed {seed}");
            new Scoring(problem, keep: null).Of(pressed).Finish.Should().BeLessThanOrEqualTo(plan.Score.Finish, $"seed {seed}");
            pressed.Runs.Zip(plan.Schedule.Runs).Should().OnlyContain(pair => pair.First.Activity != pair.Second.Activity || pair.First.Start <= pair.Second.Start, $"seed {seed}");
        }
    }

    private static Run Of(int activity, long start, long work, int worker = 0, int tool = -1) => new(activity, 0, 1, worker, tool, start, 0, 0, work, 0);
}
