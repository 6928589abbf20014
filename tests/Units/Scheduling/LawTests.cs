using Pipeline.Scheduling;

namespace Pipeline.Tests.Scheduling;

/// <summary>What holds for every problem: the same again gives the same, whatever the threads; stopping gives the best so far.</summary>
public class LawTests
{
    [Theory]
    [InlineData(3)]
    [InlineData(11)]
    [InlineData(42)]
    public void The_same_problem_and_seed_give_the_same_schedule_on_one_thread_and_on_two(int seed)
    {
        var problem = RandomProblems.Next(seed);
        var one = Solver.Solve(problem, Effort.Quick, 7, progress: null, keep: null, threads: 1).Should().BeOfType<Outcome.Planned>().Subject;
        var two = Solver.Solve(problem, Effort.Quick, 7, progress: null, keep: null, threads: 2).Should().BeOfType<Outcome.Planned>().Subject;
        two.Schedule.Runs.Should().Equal(one.Schedule.Runs);
        two.Schedule.CloseDowns.Should().Equal(one.Schedule.CloseDowns);
        two.Work.Should().Be(one.Work);
    }

    [Fact]
    public void Nothing_is_moved_about_for_a_few_minutes_of_what_is_late_anyway_but_it_is_to_be_in_time()
    {
        var problem = Given.Problem(Given.Worker((0, 100)), [Given.Task("a", 10)]);
        var scoring = new Scoring(problem, new Keep(new Schedule([], []), TicksPerMovedRun: 480));
        Score At(double lateness, double moved) => new(0, lateness, 100, 0, 0, 0, moved);

        scoring.Compare(At(lateness: 100, moved: 1), At(lateness: 40, moved: 9)).Should().BeNegative();
        scoring.Compare(At(lateness: 5000, moved: 1), At(lateness: 40, moved: 9)).Should().BePositive();
        scoring.Compare(At(lateness: 1, moved: 1), At(lateness: 0, moved: 9)).Should().BePositive();
    }

    [Fact]
    public void Cancelled_at_once_it_still_gives_a_plan_and_says_so()
    {
        var problem = RandomProblems.Next(3);
        using var cancel = new CancellationTokenSource();
        cancel.Cancel();
        var plan = Solver.Solve(problem, Effort.Thorough, 1, null, cancel.Token).Should().BeOfType<Outcome.Planned>().Subject;
        plan.StoppedEarly.Should().BeTrue();
        Auditor.Audit(problem, plan.Schedule).Should().BeEmpty();
    }

    [Fact]
    public void Progress_only_ever_gets_better()
    {
        var better = 0;
        for (var seed = 0; seed < 40; seed++)
        {
            var seen = new List<SolveProgress>();
            Solver.Solve(RandomProblems.Next(seed) with { Aims = [Aim.FinishSoon] }, Effort.Quick, 1, new Listener(seen));
            seen.Where(p => p.Bound > p.Best.Finish || p.Work > p.Budget).Should().BeEmpty();
            foreach (var (before, after) in seen.Zip(seen.Skip(1)))
            {
                better++;
                (after.Best.HardLateness, after.Best.Lateness, after.Best.Finish).CompareTo((before.Best.HardLateness, before.Best.Lateness, before.Best.Finish))
                    .Should().BeLessThanOrEqualTo(0);
            }
        }

        better.Should().BePositive();
    }

    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    public void What_is_to_be_kept_stays_where_it_was(int seed)
    {
        var problem = RandomProblems.Next(seed);
        if (Solver.Solve(problem, Effort.Quick, 1) is not Outcome.Planned before)
            return;
        var again = (Outcome.Planned)Solver.Solve(problem, Effort.Quick, 99, null, new Keep(before.Schedule, 1000), threads: 1);
        again.Score.Moved.Should().Be(0);
    }

    [Fact]
    public void After_a_change_keeping_moves_no_more_than_planning_anew()
    {
        var compared = 0;
        for (var seed = 1; seed <= 12; seed++)
        {
            var problem = RandomProblems.Next(seed);
            if (Solver.Solve(problem, Effort.Quick, 1) is not Outcome.Planned before)
                continue;
            var changed = problem with { Activities = [problem.Activities[0] with { PerUnit = problem.Activities[0].PerUnit + 1 }, .. problem.Activities.Skip(1)] };
            var keep = new Keep(before.Schedule, 1000);
            if (Solver.Solve(changed, Effort.Quick, 7) is not Outcome.Planned anew || Solver.Solve(changed, Effort.Quick, 7, null, keep, threads: 1) is not Outcome.Planned kept)
                continue;
            kept.Score.Moved.Should().BeLessThanOrEqualTo(Moved(keep, anew));
            compared++;
        }

        compared.Should().BeGreaterThan(3);
    }

    // with all it keeps: places, tools of several alike, greatest waits, decided starts
    [Fact]
    public void The_walk_over_the_order_of_runs_can_begin_with_nearly_any_schedule()
    {
        int begun = 0, planned = 0;
        for (var seed = 0; seed < 300; seed++)
        {
            var problem = RandomProblems.Next(seed);
            if (new Search(problem, Effort.Quick, seed, null, null, 1) { MostWork = 2_000 }.Run(CancellationToken.None) is not Outcome.Planned plan)
                continue;
            var net = new Net(problem);
            var components = new Components(net);
            var hours = new Hours(net);
            var heads = Heads.Of(net, components, hours);
            var ground = new Ground(net, components, heads, new Haste(net, new LowerBound(net, components, hours, heads), new OpenTime(net, [.. Enumerable.Range(0, problem.Workers.Length)], once: true)));
            planned++;
            begun += new Walk(ground, new Pricing(ground, keep: null), seed).StartFrom(InOrder.Of(plan.Schedule, ground)) ? 1 : 0;
        }

        begun.Should().BeGreaterThan(planned * 99 / 100).And.BeGreaterThan(200);
    }

    private static double Moved(Keep keep, Outcome.Planned plan)
    {
        var kept = new KeptRuns(keep);
        return plan.Schedule.Runs.Sum(run => kept.Moved(run.Activity, run.FirstUnit, run.Units, run.Worker, run.Start));
    }

    private sealed class Listener(List<SolveProgress> seen) : IProgress<SolveProgress>
    {
        public void Report(SolveProgress value) => seen.Add(value);
    }
}
