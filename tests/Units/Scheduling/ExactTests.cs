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
        for (var seed = 0; seed < 100; seed++)
        {
            var problem = OneBench(RandomProblems.Next(seed)) with { Aims = [Aim.FewChanges], Dues = [] };
            var net = new Net(problem);
            if (!ExactBatch.Covers(net) || net.Offset[^1] > 30 || Solver.Solve(problem, Effort.Quick, seed) is not Outcome.Planned plan)
                continue;
            // from a plan that wastes a day or two
            var known = plan.Score.Finish + 300;
            var (earliest, latest) = Room(net, known - 1);
            var answer = ExactBatch.Better(net, LotParts.Anywhere(net), earliest, latest, plan.Bound.Finish, (plan.Schedule, known), budget: 0.02, seed: 1, CancellationToken.None);
            answer.Bound.Should().BeLessThanOrEqualTo(plan.Score.Finish, $"seed {seed}");
            if (answer.Schedule is null)
                continue;
            better++;
            Auditor.Audit(problem, answer.Schedule).Should().BeEmpty($"seed {seed}");
        }

        better.Should().BeGreaterThan(50);
    }

    [Fact]
    public void A_better_schedule_with_lots_parted_as_in_another_parts_them_nowhere_else()
    {
        var better = 0;
        for (var seed = 0; seed < 100; seed++)
        {
            var problem = OneBench(RandomProblems.Next(seed)) with { Aims = [Aim.FewChanges], Dues = [] };
            var net = new Net(problem);
            if (!ExactBatch.Covers(net) || net.Offset[^1] > 30 || Solver.Solve(problem, Effort.Quick, seed) is not Outcome.Planned plan)
                continue;
            var known = plan.Score.Finish + 300;
            var (earliest, latest) = Room(net, known - 1);
            var parts = LotParts.AsIn(net, plan.Schedule);
            var asParted = ExactBatch.Better(net, parts, earliest, latest, plan.Bound.Finish, (plan.Schedule, known), budget: 0.02, seed: 1, CancellationToken.None);
            if (asParted.Schedule is null)
                continue;
            better++;
            Auditor.Audit(problem, asParted.Schedule).Should().BeEmpty($"seed {seed}");
            var begun = plan.Schedule.Runs.Select(r => (r.Activity, r.FirstUnit));
            asParted.Schedule.Runs.Where(r => r.Worker >= 0).Select(r => (r.Activity, r.FirstUnit)).Should().BeSubsetOf(begun, $"seed {seed}");
        }

        better.Should().BeGreaterThan(50);
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

    // Everything at one bench with one pair of hands and one tool of each kind.
    internal static Problem OneBench(Problem problem) => problem with
    {
        Workers = [problem.Workers[0] with { MostPerInterval = null }],
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
