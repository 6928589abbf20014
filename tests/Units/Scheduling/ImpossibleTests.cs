using Pipeline.Scheduling;
using static Pipeline.Tests.Scheduling.Given;

namespace Pipeline.Tests.Scheduling;

/// <summary>What cannot be done is an outcome with its reason; what was posed wrongly is an exception.</summary>
public class ImpossibleTests
{
    [Fact]
    public void A_unit_longer_than_every_sitting() =>
        Obstacles(Problem(Worker((0, 100)), [Task("a", 90, setUp: 20)])).Should().Equal(new Obstacle.FitsNoInterval(0, 110, 100));

    [Fact]
    public void A_unit_too_large_for_the_place() =>
        Obstacles(Problem(Worker((0, 100)), [Task("a", 10, unattended: 5) with { Places = [new PlaceUse(0, 3, 0)] }]) with { Places = [new Place("rack", 2)] })
            .Should().Equal(new Obstacle.FitsNoPlace(0, 0, 3, 2));

    [Fact]
    public void Waits_that_go_round_in_a_ring()
    {
        var ring = Obstacles(Problem(Worker((0, 100)), [Task("a", 10), Task("b", 10)], After(0, 1, 20), After(1, 0, 5)))
            .Should().ContainSingle().Which.Should().BeOfType<Obstacle.WaitsContradict>().Subject;
        ring.Waits.Should().Equal(0, 1);
        ring.Excess.Should().BePositive();
    }

    [Fact]
    public void A_greatest_wait_shorter_than_the_work_between() =>
        Obstacles(Problem(Worker((0, 100)), [Task("a", 10), Task("b", 10), Task("c", 10)], After(0, 1), After(1, 2), After(0, 2, 0, 5)))
            .Should().ContainItemsAssignableTo<Obstacle.WaitsContradict>();

    [Fact]
    public void A_greatest_wait_that_the_open_hours_forbid() =>
        Obstacles(Problem(Worker((0, 50), (200, 250)), [Task("a", 40, unattended: 20), Task("b", 40)], After(0, 1, 0, 30)))
            .Should().NotContain(o => o is Obstacle.WaitsContradict);

    [Fact]
    public void A_pin_outside_the_hours() =>
        Obstacles(Problem(Worker((0, 50)), [Task("a", 10) with { PinnedStart = 45 }])).Should().Contain(new Obstacle.PinContradicts(0, null, 0));

    [Fact]
    public void A_pin_too_soon_after_another() =>
        Obstacles(Problem(Worker((0, 100)), [Task("a", 10) with { PinnedStart = 0 }, Task("b", 10) with { PinnedStart = 20 }], After(0, 1, 30)))
            .Should().Contain(new Obstacle.PinContradicts(1, 0, 20));

    [Fact]
    public void Hours_that_end_before_the_work_says_how_much_is_left() =>
        Obstacles(Problem(Worker((0, 100)), [Task("a", 60), Task("b", 60)], After(0, 1)))
            .Should().Contain(o => o is Obstacle.OpenHoursEnd);

    [Fact]
    public void A_hard_due_time_that_is_missed_says_the_earliest_and_shows_the_closest_plan()
    {
        var outcome = Solver.Solve(Problem(Worker((0, 100)), [Task("a", 60)]) with { Dues = [new Due(0, 40, IsHard: true)] }, Effort.Quick);
        var impossible = outcome.Should().BeOfType<Outcome.Impossible>().Subject;
        impossible.Obstacles.Should().Equal(new Obstacle.HardDueMissed(0, 60, 60));
        impossible.Closest!.Schedule.Runs.Should().HaveCount(1);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(2)]
    public void A_wait_that_names_no_activity_is_the_callers_mistake(int to) =>
        FluentActions.Invoking(() => Solver.Solve(Problem(Worker((0, 100)), [Task("a", 1), Task("b", 1)], After(0, to))))
            .Should().Throw<ArgumentException>().WithMessage("Wait 0*");

    [Fact]
    public void A_wait_unit_by_unit_between_lots_of_different_size_is_the_callers_mistake() =>
        FluentActions.Invoking(() => Solver.Solve(Problem(Worker((0, 100)), [Task("a", 1, units: 2), Task("b", 1)], After(0, 1))))
            .Should().Throw<ArgumentException>().WithMessage("Wait 0*");

    [Fact]
    public void Nothing_to_do_is_a_plan_with_nothing_in_it() =>
        Plan(new Problem()).Schedule.Runs.Should().BeEmpty();
}
