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
                plan.Bound.Finish.Should().BeLessThanOrEqualTo(plan.Score.Finish, $"seed {seed}");
            }
        }

        planned.Should().BeGreaterThan(800);
    }
}
