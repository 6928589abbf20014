using Google.OrTools.Sat;
using Pipeline.Scheduling;

namespace Pipeline.Tests.Scheduling;

/// <summary>The exact model says neither less nor more than the problem: what the auditor passes it takes, what it gives the auditor passes.</summary>
public class ExactTests
{
    [Fact]
    public void Every_schedule_of_the_search_is_one_of_the_model()
    {
        var seen = 0;
        for (var seed = 0; seed < 100; seed++)
        {
            var problem = OneBench(RandomProblems.Next(seed)) with { Aims = [Aim.FewChanges] };
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

    [Fact]
    public void Every_better_schedule_of_the_model_passes_the_auditor()
    {
        var better = 0;
        foreach (var (seed, net, plan) in SmallBatches())
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

    [Fact]
    public void A_better_schedule_with_lots_parted_as_in_another_parts_them_nowhere_else()
    {
        var better = 0;
        foreach (var (seed, net, plan) in SmallBatches())
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

    [Fact]
    public void Every_less_late_schedule_of_the_model_is_that_and_passes_the_auditor()
    {
        var better = 0;
        foreach (var (seed, net, plan) in SmallBatches())
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

    private static IEnumerable<(string Seed, Net Net, Outcome.Planned Plan)> SmallBatches()
    {
        for (var seed = 0; seed < 100; seed++)
        {
            var problem = OneBench(RandomProblems.Next(seed)) with { Aims = [Aim.FewChanges], Dues = [] };
            var net = new Net(problem);
            if (ExactBatch.Covers(net) && net.Offset[^1] <= 30 && Solver.Solve(problem, Effort.Quick, seed) is Outcome.Planned plan)
                yield return ($"seed {seed}", net, plan);
        }
    }

    // From a plan that wastes a day or two.
    private static ExactBatchAnswer Better(Net net, LotParts parts, Outcome.Planned plan)
    {
        var known = plan.Score.Finish + 300;
        var (earliest, latest) = Room(net, known - 1);
        return ExactBatch.Better(net, parts, earliest, latest, plan.Bound.Finish, (plan.Schedule, known), budget: 0.02, seed: 1, CancellationToken.None);
    }

    // Everything at one bench with one pair of hands and one tool of each kind.
    internal static Problem OneBench(Problem problem) => problem with
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
