using Pipeline.Scheduling;
using static Pipeline.Tests.Scheduling.Given;

namespace Pipeline.Tests.Scheduling;

/// <summary>Waits that no schedule can keep, seen without a search; and never seen where a schedule keeps them.</summary>
public class ContradictionTests
{
    [Fact]
    public void A_ring_names_its_own_waits_and_nothing_that_hangs_on_it()
    {
        // b to c is held up by the ring of a and b; d comes before all of it
        var problem = Problem(
            Worker((0, 1000)),
            [Task("d", 10, units: 3), Task("a", 10, units: 3), Task("b", 10, units: 3), Task("c", 10, units: 3)],
            After(0, 1), After(1, 2, 40), After(2, 3, 7), After(1, 2, 0, 15));
        var ring = Contradictions.Rings(problem).Should().ContainSingle().Subject;
        ring.Waits.Should().Equal(1, 3);
        ring.Excess.Should().Be(25);
    }

    [Fact]
    public void Two_rings_are_both_named() =>
        Contradictions.Rings(Problem(
            Worker((0, 1000)),
            [Task("a", 10), Task("b", 10), Task("c", 10), Task("d", 10)],
            After(0, 1, 40), After(0, 1, 0, 30), After(1, 2), After(2, 3, 50), After(2, 3, 0, 30)))
            .Select(ring => string.Join(',', ring.Waits)).Should().Equal("0,1", "3,4");

    [Fact]
    public void Least_waits_alone_that_tie_are_no_greatest_wait_too_short() =>
        Contradictions.OfHours(
            Problem(Worker((0, 50), (200, 250)), [Task("a", 40), Task("b", 40)], After(0, 1), new Wait(1, Edge.Start, 0, Edge.Finish, -30, null)), leeway: 0)
            .Should().BeEmpty();

    [Fact]
    public void A_night_longer_than_what_may_lie_over_it() =>
        Contradictions.OfHours(Evenings(least: 60, greatest: 600), leeway: 60).Should().Equal(new Obstacle.GreatestWaitTooShort(1));

    [Theory]
    [InlineData(30, 600)]
    [InlineData(60, 1400)]
    public void Room_the_same_evening_or_the_next_is_no_contradiction(int least, int greatest) =>
        Contradictions.OfHours(Evenings(least, greatest), leeway: 60).Should().BeEmpty();

    [Fact]
    public void Whoever_is_said_to_be_impossible_has_no_plan()
    {
        var impossible = 0;
        for (var seed = 0; seed < 120; seed++)
        {
            var random = new Random(seed);
            var tasks = Enumerable.Range(0, 4).Select(i => Task($"t{i}", random.Next(1, 20), random.Next(1, 3), unattended: random.Next(3) == 0 ? 30 : 0)).ToArray();
            tasks = [.. tasks.Select(task => task with { Units = tasks[0].Units })];
            var waits = Enumerable.Range(0, 3).Select(i => After(i, i + 1, random.Next(0, 40)))
                .Append(After(0, random.Next(1, 4), 0, random.Next(40, 400)))
                .Append(After(1, 3, 0, random.Next(40, 400)));
            var problem = Problem(Worker([.. Enumerable.Range(0, 12).Select(day => (day * 200L, (day * 200L) + 60))]), tasks, [.. waits]);
            var isSaid = Contradictions.Rings(problem) is { IsEmpty: false } || Contradictions.OfHours(problem, leeway: 0) is { IsEmpty: false };
            if (!isSaid)
                continue;
            impossible++;
            Solver.Solve(problem, Effort.Quick).Should().BeOfType<Outcome.Impossible>($"seed {seed}");
        }

        impossible.Should().BeInRange(20, 100);
    }

    // Twelve days of 1440 ticks, an evening of 60 on each.
    private static Problem Evenings(long least, long greatest) => Problem(
        Worker([.. Enumerable.Range(0, 12).Select(day => (day * 1440L, (day * 1440L) + 60))]),
        [Task("mask", 10), Task("unmask", 10)],
        After(0, 1, least), After(0, 1, 0, greatest));
}
