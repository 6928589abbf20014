using Google.OrTools.Sat;
using Pipeline.Scheduling;

namespace Pipeline.Tests.Scheduling;

/// <summary>The exact model says neither less nor more than the problem: what the auditor passes it takes, what it gives the auditor passes.</summary>
public class ExactTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Every_schedule_of_the_search_is_one_of_the_model(bool isShared)
    {
        var seen = 0;
        for (var seed = 0; seed < 100; seed++)
        {
            var problem = Bench(seed, isShared) with { Aims = [Aim.FewChanges] };
            var net = new Net(problem);
            if (!ExactBatch.Covers(net) || Solver.Solve(problem, Effort.Quick, seed) is not Outcome.Planned plan)
                continue;
            seen++;
            var (earliest, latest) = Room(net, plan.Score.Finish);
            foreach (var parts in new[] { LotParts.Anywhere(net), LotParts.AsIn(net, plan.Schedule) })
            {
                var model = new ExactModel(net, parts, earliest, latest, earliest.Min(), plan.Score.Finish);
                model.IsPossible.Should().BeTrue($"seed {seed}");
                model.Fix(plan.Schedule);
                ExactSolver.Run(model.Model, "num_workers:1", (status, _) => status, CancellationToken.None)
                    .Should().BeOneOf([CpSolverStatus.Optimal, CpSolverStatus.Feasible], $"seed {seed}");
            }
        }

        seen.Should().BeGreaterThan(50);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Every_better_schedule_of_the_model_passes_the_auditor(bool isShared)
    {
        var better = 0;
        foreach (var (seed, net, plan) in SmallBatches(isShared))
        {
            var answer = Better(net, LotParts.Anywhere(net), plan);
            answer.Bound.Should().BeLessThanOrEqualTo(plan.Score.Finish, seed);
            if (answer.Schedule is null)
                continue;
            better++;
            Auditor.Audit(net.Problem, answer.Schedule).Should().BeEmpty(seed);
        }

        better.Should().BeGreaterThan(50);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_better_schedule_with_lots_parted_as_in_another_parts_them_nowhere_else(bool isShared)
    {
        var better = 0;
        foreach (var (seed, net, plan) in SmallBatches(isShared))
        {
            if (Better(net, LotParts.AsIn(net, plan.Schedule), plan).Schedule is not { } schedule)
                continue;
            better++;
            Auditor.Audit(net.Problem, schedule).Should().BeEmpty(seed);
            var begun = plan.Schedule.Runs.Select(r => (r.Activity, r.FirstUnit));
            schedule.Runs.Where(r => r.Worker >= 0).Select(r => (r.Activity, r.FirstUnit)).Should().BeSubsetOf(begun, seed);
        }

        better.Should().BeGreaterThan(50);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Every_less_late_schedule_of_the_model_is_that_and_passes_the_auditor(bool isShared)
    {
        var better = 0;
        foreach (var (seed, net, plan) in SmallBatches(isShared))
        {
            // due when half the time is over, and not minded by the search that made the plan
            var last = Enumerable.Range(0, net.Count).Where(a => net.Done[a] < net.Units[a]).ToList();
            var late = net.Problem with { Dues = [.. last.Select(a => new Due(a, plan.Score.Finish / 2, 1 + (a % 3)))] };
            var due = new Net(late);
            var (earliest, latest) = Room(due, plan.Score.Finish);
            if (ExactBatch.LessLate(due, LotParts.Anywhere(due), earliest, latest, 1, plan.Score.Finish, plan.Schedule, budget: 0.02, seed: 1, CancellationToken.None) is not { } schedule)
                continue;
            better++;
            Auditor.Audit(late, schedule).Should().BeEmpty(seed);
            var scoring = new Scoring(late, keep: null);
            scoring.Of(schedule).Lateness.Should().BeLessThan(scoring.Of(plan.Schedule).Lateness, seed);
        }

        better.Should().BeGreaterThan(30);
    }

    [Fact]
    public void The_best_of_the_model_is_the_best_of_every_way_to_share_two_airbrushes()
    {
        var planned = 0;
        for (var seed = 0; seed < 100; seed++)
        {
            var problem = EveryWay.Next(seed);
            var best = EveryWay.EarliestFinish(problem);
            planned += best is null ? 0 : 1;
            Best(problem, until: 50).Finish.Should().Be(best, $"seed {seed}");
        }

        planned.Should().BeGreaterThan(60);
    }

    [Fact]
    public void The_best_of_the_model_is_that_of_a_second_opinion_for_two_painters_with_and_without_a_cap_on_their_days()
    {
        for (var seed = 0; seed < 60; seed++)
        {
            var problem = SecondOpinions.Shared(seed);
            if (seed % 3 > 0)
                problem = problem with { Workers = [.. problem.Workers.Select(w => Given.Days(new Random(seed).Next(50, 110), [.. w.Open.Open.Chunk(2).Select(day => day.Select(o => (o.Start, o.End)).ToArray())]))] };

            Best(problem, until: 2000).Finish.Should().Be(SecondOpinions.Of(problem), $"seed {seed}");
        }
    }

    [Fact]
    public void One_of_two_painters_takes_the_airbrush_over_and_whoever_has_it_last_closes_it_down()
    {
        // the friend leaves at 30 and could not close it down after 27: the friend is first
        var problem = Given.Problem(Given.Worker((0, 100)), [Spray("black", 0, by: 0), Spray("white", 1, by: 1)]) with
        {
            Workers = [Given.Worker((0, 100)), Given.Worker((0, 30))],
            Tools = [Given.Airbrush(cleanOut: 5, fill: 2, closeDown: 12)],
        };

        var schedule = Best(problem);

        schedule.Runs.Select(r => (r.Activity, r.Worker, r.Start, r.CleanOut)).Should().Equal((1, 1, 0, 2), (0, 0, 12, 5));
        schedule.CloseDowns.Should().ContainSingle().Which.Worker.Should().Be(0);
    }

    [Fact]
    public void Two_airbrushes_alike_keep_a_colour_each_and_both_are_closed_down()
    {
        var problem = Given.Problem(Given.Worker((0, 70)), [Spray("black", 0), Spray("white", 1), Spray("black again", 0)], Given.After(0, 1), Given.After(1, 2)) with
        {
            Tools = [Given.Airbrush(cleanOut: 5, fill: 2, closeDown: 12, count: 2)],
        };

        var schedule = Best(problem);

        schedule.Runs.Select(r => (r.ToolNumber, r.Start, r.CleanOut)).Should().Equal((schedule.Runs[0].ToolNumber, 0, 2), (1 - schedule.Runs[0].ToolNumber, 12, 2), (schedule.Runs[0].ToolNumber, 24, 0));
        schedule.CloseDowns.Should().HaveCount(2);
    }

    [Fact]
    public void All_under_a_tight_mask_is_done_on_one_Sunday_by_two()
    {
        // three pieces masked, coated and free again 20 minutes after at the latest, ten minutes each: 90 minutes in a Sunday of 60
        (long, long)[] sundays = [(0, 60), (10_080, 10_140)];
        var problem = Given.Problem(
            Given.Worker(sundays),
            [Given.Task("mask", 10, units: 3), Given.Task("coat", 10, units: 3) with { Workers = [0] }, Given.Task("unmask", 10, units: 3)],
            Given.After(0, 1),
            Given.After(1, 2),
            Given.After(0, 2, greatest: 20));

        Given.Plan(problem).Score.Finish.Should().Be(10_110);
        var two = Given.Plan(problem with { Workers = [Given.Worker(sundays), Given.Worker(sundays)] });
        two.Score.Finish.Should().Be(60, "one masks, the other coats, and the first piece is unmasked at 30");
        two.Bound.Finish.Should().Be(60);
        two.Bound.Source.Should().Be(BoundSource.Proof);
    }

    [Fact]
    public void Whole_lots_can_be_best_as_they_are_where_parted_ones_would_be_done_a_day_sooner()
    {
        // three lots of two pieces, 30 minutes each and 5 of set-up, in sittings of 100: whole, each lot has a sitting to itself
        var problem = Given.Problem(Given.Worker((0, 100), (1440, 1540), (2880, 2980)), [.. Enumerable.Range(0, 3).Select(a => Given.Task($"{a}", 30, units: 2, setUp: 5))]);
        var net = new Net(problem);
        var whole = new Schedule([.. Enumerable.Range(0, 3).Select(a => new Run(a, 0, 2, 0, -1, 1440 * a, 0, 5, 60, 0))], []);
        Auditor.Audit(problem, whole).Should().BeEmpty();
        var finish = 2880 + 65;
        var (earliest, latest) = Room(net, finish - 1);
        ExactBatchAnswer Ask(LotParts parts) => ExactBatch.Better(net, parts, earliest, latest, 1, (whole, finish), budget: 1, seed: 1, CancellationToken.None);

        Ask(LotParts.AsIn(net, whole)).Should().Be(new ExactBatchAnswer(null, finish));
        Ask(LotParts.Anywhere(net)).Bound.Should().Be(1440 + 100);
    }

    [Theory]
    [InlineData(1, false)]
    [InlineData(2, true)]
    public void What_has_filled_a_place_beyond_its_room_is_no_proof_that_nothing_can_be_done(int capacity, bool covers)
    {
        // two pieces already stand in it
        var done = Given.Task("done", 10, units: 2) with { Places = [new PlaceUse(0, 1, 0)], Past = [new Run(0, 0, 2, 0, -1, 0, 0, 0, 20, 0)] };
        var problem = Given.Problem(Given.Worker((0, 100)), [done, Given.Task("next", 10) with { Places = [new PlaceUse(0, 1, 0)] }]) with { Places = [new Place("rack", capacity)] };

        ExactBatch.Covers(new Net(problem)).Should().Be(covers);
    }

    private static IEnumerable<(string Seed, Net Net, Outcome.Planned Plan)> SmallBatches(bool isShared)
    {
        for (var seed = 0; seed < 100; seed++)
        {
            var problem = Bench(seed, isShared) with { Aims = [Aim.FewChanges], Dues = [] };
            var net = new Net(problem);
            if (ExactBatch.Covers(net) && net.Offset[^1] <= 30 && Solver.Solve(problem, Effort.Quick, seed) is Outcome.Planned plan)
                yield return ($"seed {seed}", net, plan);
        }
    }

    // Shared by several painters of different hours and skills, with several tools alike, and caps on their days; or not.
    internal static Problem Bench(int seed, bool isShared) => isShared ? RandomProblems.Next(seed) : OneBench(RandomProblems.Next(seed));

    // From a plan that wastes a day or two.
    private static ExactBatchAnswer Better(Net net, LotParts parts, Outcome.Planned plan)
    {
        var known = plan.Score.Finish + 300;
        var (earliest, latest) = Room(net, known - 1);
        return ExactBatch.Better(net, parts, earliest, latest, plan.Bound.Finish, (plan.Schedule, known), budget: 0.02, seed: 1, CancellationToken.None);
    }

    private static Activity Spray(string name, int load, int? by = null) =>
        Given.Task(name, 10) with { Tool = new ToolUse(0, load), Workers = by is { } w ? [w] : [] };

    private static Schedule Best(Problem problem) => Best(problem, until: 1000).Schedule!;

    // The model alone, with no schedule known.
    private static (long? Finish, Schedule? Schedule) Best(Problem problem, long until)
    {
        var net = new Net(problem);
        var model = new ExactModel(net, LotParts.Anywhere(net), new long[net.Offset[^1]], [.. Enumerable.Repeat(until, net.Offset[^1])], 0, until);
        if (!model.IsPossible)
            return (null, null);
        model.AskForFinish();
        var (status, finish, schedule) = ExactSolver.Run(
            model.Model,
            "num_workers:1",
            (status, solver) => status == CpSolverStatus.Optimal ? (status, (long?)ExactSolver.Bound(solver), model.Read(solver)) : (status, null, null),
            CancellationToken.None);
        status.Should().BeOneOf(CpSolverStatus.Optimal, CpSolverStatus.Infeasible);
        if (schedule is not null)
            Auditor.Audit(problem, schedule).Should().BeEmpty();
        return (finish, schedule);
    }

    // Everything at one bench with one pair of hands and one tool of each kind.
    private static Problem OneBench(Problem problem) => problem with
    {
        Workers = [problem.Workers[0] with { MostPerDay = null }],
        Tools = [.. problem.Tools.Select(t => t with { Count = 1 })],
        Activities = [.. problem.Activities.Select(a => a with { Workers = [], Past = [.. a.Past.Select(r => r with { Worker = Math.Min(0, r.Worker), ToolNumber = Math.Min(0, r.ToolNumber) })] })],
    };

    private static (long[] Earliest, long[] Latest) Room(Net net, long finish)
    {
        var components = new Components(net);
        var hours = new Hours(net);
        var heads = Heads.Of(net, components, hours);
        return (heads.Starts, new LowerBound(net, components, hours, heads).LatestStarts(finish));
    }
}
