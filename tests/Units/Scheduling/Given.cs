using System.Collections.Immutable;
using Pipeline.Scheduling;

namespace Pipeline.Tests.Scheduling;

/// <summary>Short words to pose a problem, solve it and look at the plan.</summary>
internal static class Given
{
    public static Worker Worker(params (long From, long To)[] open) => new("painter", new Calendar(open.Select(o => new Interval(o.From, o.To))));

    /// <summary>A worker with a cap on each of some days.</summary>
    public static Worker Days(long most, params (long From, long To)[][] days) =>
        new("painter", Calendar.OfDays(days.Select(day => day.Select(o => new Interval(o.From, o.To)))), most);

    public static Activity Task(string name, long perUnit, int units = 1, long setUp = 0, long unattended = 0) =>
        new() { Name = name, PerUnit = perUnit, Units = units, SetUp = setUp, Unattended = unattended };

    public static Wait After(int from, int to, long least = 0, long? greatest = null, Scope scope = Scope.UnitByUnit) =>
        new(from, Edge.Finish, to, Edge.Start, least, greatest, scope);

    public static Problem Problem(Worker worker, Activity[] activities, params Wait[] waits) =>
        new() { Workers = [worker], Activities = [.. activities], Waits = [.. waits] };

    /// <summary>A tool with two loads, black and white.</summary>
    public static Tool Airbrush(long cleanOut, long fill = 0, long closeDown = 0, int count = 1) => new(
        "airbrush", count, ["black", "white"], [[0, cleanOut], [cleanOut, 0]], [fill, fill], [closeDown, closeDown]);

    /// <summary>Solves, and expects a plan without fault.</summary>
    public static Outcome.Planned Plan(Problem problem, Effort effort = Effort.Quick)
    {
        var outcome = Solver.Solve(problem, effort);
        var plan = outcome.Should().BeOfType<Outcome.Planned>(outcome is Outcome.Impossible no ? string.Join("; ", no.Obstacles) : "").Subject;
        Auditor.Audit(problem, plan.Schedule).Should().BeEmpty();
        plan.Refused.Should().Be(0);
        plan.Bound.Finish.Should().BeLessThanOrEqualTo(plan.Score.Finish);
        plan.Reasons.Should().HaveCount(plan.Schedule.Runs.Length);
        return plan;
    }

    /// <summary>Solves, and expects obstacles.</summary>
    public static ImmutableArray<Obstacle> Obstacles(Problem problem) =>
        Solver.Solve(problem, Effort.Quick).Should().BeOfType<Outcome.Impossible>().Subject.Obstacles;

    /// <summary>"activity@start" of every run in order.</summary>
    public static string Runs(Outcome.Planned plan) => string.Join(" ", plan.Schedule.Runs.Select(r => $"{r.Activity}x{r.Units}@{r.Start}"));
}
