using Pipeline.Scheduling;
using static Pipeline.Tests.Scheduling.Given;

namespace Pipeline.Tests.Scheduling;

/// <summary>No evening is wasted: sittings are filled to the end, and a tool is taken out for enough work to be worth it.</summary>
public class SittingTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Steps_that_can_fill_every_sitting_to_the_minute_do(int seed)
    {
        // eight sittings cut into pieces of 15 to 45, shuffled
        var random = new Random(seed);
        var pieces = new List<long>();
        for (var sitting = 0; sitting < 8; sitting++)
        {
            long rest = 120;
            for (; rest > 60; rest -= pieces[^1])
                pieces.Add(random.Next(15, 46));
            pieces.Add(rest);
        }

        Activity[] activities = [.. pieces.OrderBy(_ => random.Next()).Select((ticks, i) => Task($"{i}", ticks))];
        var evenings = Enumerable.Range(0, 12).Select(d => (d * 1440L, (d * 1440L) + 120)).ToArray();
        Plan(Problem(Worker(evenings), activities), Effort.Usual).Score.Finish.Should().Be((7 * 1440) + 120);
    }

    [Fact]
    public void A_tool_that_must_be_closed_down_is_taken_out_on_one_evening_for_all_that_needs_it()
    {
        // each model is trimmed before it is sprayed; a second evening with the airbrush would cost a sixth sitting
        Activity[] activities = [
            .. Enumerable.Range(0, 6).Select(i => Task($"trim {i}", 50)),
            .. Enumerable.Range(0, 6).Select(i => Task($"spray {i}", 10) with { Tool = new ToolUse(0, 0) }),
            .. Enumerable.Range(0, 5).Select(i => Task($"paint {i}", 25)),
        ];
        Wait[] waits = [.. Enumerable.Range(0, 6).Select(i => After(i, 6 + i))];
        var evenings = Enumerable.Range(0, 12).Select(d => (d * 1440L, (d * 1440L) + 100)).ToArray();
        var plan = Plan(Problem(Worker(evenings), activities, waits) with { Tools = [Airbrush(cleanOut: 5, fill: 5, closeDown: 10)] });
        plan.Schedule.CloseDowns.Should().HaveCount(1);
        plan.Score.Finish.Should().BeLessThanOrEqualTo((4 * 1440) + 100);
    }

    [Fact]
    public void A_tool_that_is_not_needed_again_is_closed_down_while_something_dries()
    {
        // sprayed for 10, dry after 30, varnished by hand for 20: closing down takes 12 of the 30
        Activity[] activities = [Task("spray", 10) with { Tool = new ToolUse(0, 0) }, Task("varnish", 20)];
        var plan = Plan(Problem(Worker((0, 100)), activities, After(0, 1, least: 30)) with { Tools = [Airbrush(cleanOut: 5, closeDown: 12)] });

        plan.Schedule.CloseDowns.Should().ContainSingle().Which.Start.Should().Be(10);
        plan.Score.Finish.Should().Be(60);
    }

    [Fact]
    public void A_gap_too_short_to_close_a_tool_down_in_is_left_alone()
    {
        Activity[] activities = [Task("spray", 10) with { Tool = new ToolUse(0, 0) }, Task("varnish", 20)];
        var plan = Plan(Problem(Worker((0, 100)), activities, After(0, 1, least: 11)) with { Tools = [Airbrush(cleanOut: 5, closeDown: 12)] });

        plan.Schedule.CloseDowns.Should().ContainSingle().Which.Start.Should().Be(41);
    }

    [Fact]
    public void A_tool_handed_over_while_both_are_at_hand_is_not_closed_down_between_them()
    {
        Problem problem = new()
        {
            Workers = [Worker((0, 135)), Worker((95, 240))],
            Tools = [Airbrush(cleanOut: 0, fill: 10, closeDown: 40)],
            Activities = [
                Task("her spraying", 85) with { Tool = new ToolUse(0, 0), Workers = [0] },
                Task("his spraying", 100) with { Tool = new ToolUse(0, 0), Workers = [1] },
            ],
        };
        // filled at 0, hers to 95, his to 195; Plan() sees that the bound says no more than that
        var plan = Plan(problem);
        plan.Score.Finish.Should().Be(195);
        plan.Schedule.CloseDowns.Should().HaveCount(1);
    }

    [Fact]
    public void The_bound_leaves_room_to_close_a_tool_down_between_the_units_of_a_parted_lot()
    {
        // two units of 50 fit into each sitting of 120 beside a close-down of 20: three sittings, the last without it
        var spray = Task("spray", 50, units: 6) with { Tool = new ToolUse(0, 0) };
        var evenings = Enumerable.Range(0, 6).Select(d => (d * 1440L, (d * 1440L) + 120)).ToArray();
        var problem = Problem(Worker(evenings), [spray]) with { Tools = [Airbrush(cleanOut: 0, closeDown: 20)] };
        Plan(problem).Score.Finish.Should().Be((2 * 1440) + 100);
        BoundFromAfar.Of(problem, (2 * 1440) + 100).Should().BeLessThanOrEqualTo((2 * 1440) + 100);
    }

    [Theory]
    [InlineData(110, 150, 0)] // inside one sitting only its end could be saved
    [InlineData(100, 150, 1)] // ready as it opens: not needed at all
    [InlineData(90, 150, 1)] // ready in the closed hours before it
    [InlineData(50, 250, 1)] // not ready in the first, but perhaps without the second
    [InlineData(50, 400, 2)]
    [InlineData(220, 280, 0)] // in closed hours, after the same sitting
    public void As_many_sittings_could_be_saved_as_begin_after_the_earliest_time_at_which_all_could_be_ready(long bound, long finish, int sittings)
    {
        var net = new Net(Problem(Worker((0, 80), (100, 200), (300, 500)), [Task("coat", 10)]));

        new OpenTime(net, [0], once: true).Between(bound, finish).Intervals.Should().Be(sittings);
    }
}
