using Pipeline.Scheduling;

namespace Pipeline.Tests.Published.Scheduling;

/// <summary>
/// The 6 x 6 job shop of Fisher and Thompson, in Muth and Thompson (eds), Industrial Scheduling, 1963; optimum 55.
/// Typed from memory.
/// </summary>
public class JobShopTests
{
    private static readonly (int Machine, int Duration)[][] Jobs =
    [
        [(2, 1), (0, 3), (1, 6), (3, 7), (5, 3), (4, 6)],
        [(1, 8), (2, 5), (4, 10), (5, 10), (0, 10), (3, 4)],
        [(2, 5), (3, 4), (5, 8), (0, 9), (1, 1), (4, 7)],
        [(1, 5), (0, 5), (2, 5), (3, 3), (4, 8), (5, 9)],
        [(2, 9), (1, 3), (4, 5), (5, 4), (0, 3), (3, 1)],
        [(1, 3), (3, 3), (5, 9), (0, 10), (4, 4), (2, 1)],
    ];

    [Fact]
    public void The_six_by_six_is_finished_at_55_and_that_is_proved()
    {
        var plan = Solver.Solve(Shop(Jobs)).Should().BeOfType<Outcome.Planned>().Subject;
        plan.Score.Finish.Should().Be(55);
        plan.Bound.IsTight.Should().BeTrue();
        Auditor.Audit(Shop(Jobs), plan.Schedule).Should().BeEmpty();
    }

    [Fact]
    public void With_machines_as_workers_it_is_no_different()
    {
        // the general search has to find it without the exact solver
        var shop = Shop(Jobs);
        var always = new Pipeline.Scheduling.Calendar([new Interval(0, 1000)]);
        var general = shop with
        {
            Places = [],
            Workers = [.. Enumerable.Range(0, 6).Select(m => new Worker($"machine {m}", always))],
            Activities = [.. shop.Activities.Select(a => a with { PerUnit = a.Unattended, Unattended = 0, Workers = [a.Places[0].Place], Places = [] })],
        };
        var plan = Solver.Solve(general).Should().BeOfType<Outcome.Planned>().Subject;
        plan.Score.Finish.Should().Be(55);
        plan.Bound.Finish.Should().BeLessThanOrEqualTo(55);
    }

    private static Problem Shop((int Machine, int Duration)[][] jobs)
    {
        var activities = jobs.SelectMany((job, j) => job.Select((step, s) => new Activity
        {
            Name = $"job {j} step {s}",
            Unattended = step.Duration,
            Places = [new PlaceUse(step.Machine, 1, 0)],
        }));
        var waits = jobs.SelectMany((job, j) => Enumerable.Range(1, job.Length - 1)
            .Select(s => new Wait((j * job.Length) + s - 1, Edge.Finish, (j * job.Length) + s, Edge.Start, 0, null)));
        return new Problem
        {
            Places = [.. Enumerable.Range(0, jobs[0].Length).Select(m => new Place($"machine {m}", 1))],
            Activities = [.. activities],
            Waits = [.. waits],
        };
    }
}
