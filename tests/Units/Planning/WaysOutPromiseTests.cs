using Pipeline.Abstractions;
using Pipeline.Planning;
using Pipeline.Workflows;
using static Pipeline.Tests.Units.Planning.RouteSteps;

namespace Pipeline.Tests.Units.Planning;

/// <summary>A way out promises what the changed file then plans, and asks for no more than it takes. From Monday 30 November 18:00.</summary>
public class WaysOutPromiseTests
{
    private static readonly Paint Undercoat = Pot("slate undercoat", Lacquer);
    private static readonly Paint Boot = Pot("wet boot", Waterborne);

    [Theory]
    [InlineData(0)]
    [InlineData(10)]
    public void Where_days_are_to_be_even_the_date_is_that_of_the_even_plan(double slack)
    {
        // 7 h in evenings of 3 h, the third of which is a week away: with one more on Tuesday it is 3 + 3 + 1 soonest, and evener as 3 + 2 + 2
        Workshop Late() => Workshop.In().Weekly("Mon Thu", "19:00", "22:15").Slack(slack).Aim(BatchAim.EvenDays, BatchAim.FinishSoon, BatchAim.FewChanges, BatchAim.ShortMasks)
            .Model("Diver", 14, r => r.Work("trim", 30), due: "2026-12-06 22:00");
        var promised = Late().Plan().WaysOut.Where(way => way.Change is Change.MoreSittings { Sittings.Count: 1 }).ToList();

        promised.Should().NotBeEmpty();
        foreach (var way in promised)
        {
            var sitting = ((Change.MoreSittings)way.Change).Sittings[0];
            var changed = Late().On($"{sitting.From.Date:uuuu-MM-dd}", $"{sitting.From:HH:mm}", $"{sitting.To:HH:mm}").Plan();
            changed.Finishes.Max(finish => finish.Ready.ToInstant()).Should().Be(way.Ready.ToInstant(), way.Words);
        }
    }

    [Fact]
    public void Too_late_even_so_the_fewest_brisk_steps_that_do_as_much_are_told()
    {
        // comfortably the undercoat can be masked a day later, at the low figure the same evening; due at once, and looked over a day after the last coat
        var plan = Workshop.Evenings().Tool("airbrush", 1).Model(
            "Diver", 1, r => r.Spray(Undercoat, role: LayerRole.Undercoat).Mask("suit", "suit").Spray(Boot, "boots").Unmask("suit").Rest(hours: 20).Work("look over", 5), due: "2026-11-30 19:05").Plan();

        var way = plan.WaysOut.Should().ContainSingle(way => way.Change is Change.Brisk).Which;
        ((Change.Brisk)way.Change).Steps.Should().ContainSingle().Which.Step.Should().Be("mask the suit");
        way.LateMinutes.Should().BeGreaterThan(0);
    }

    [Fact]
    public void The_whole_batch_brisk_is_told_only_if_it_is_ready_sooner_than_a_few_steps()
    {
        var brisk = Workshop.Evenings().Tool("airbrush", 1).Model(
            "Diver", 1, r => r.Spray(Undercoat, role: LayerRole.Undercoat).Mask("suit", "suit").Spray(Boot, "boots").Unmask("suit"), due: "2026-12-01 19:40")
            .Plan().WaysOut.Where(way => way.Change is Change.Brisk).ToList();

        brisk[0].Change.Should().BeOfType<Change.Brisk>().Which.Steps.Should().NotBeEmpty();
        brisk.Skip(1).Should().OnlyContain(way => way.Ready.ToInstant() < brisk[0].Ready.ToInstant());
    }

    [Fact]
    public void The_one_late_model_may_be_left_for_later_though_it_is_the_least_work()
    {
        // a milestone that dries for twelve days; the divers are most of the work, and leaving them out helps nothing
        var plan = Workshop.Evenings().Model("Divers", 6, r => r.Work("trim", 30), due: "2026-12-03 22:00")
            .Model("Milestone", 1, r => r.Work("seal", 10).Rest(hours: 290).Work("trim", 10), due: "2026-12-02 22:00").Plan();

        plan.WaysOut.Should().Contain(way => way.Change is Change.LeaveOut && way.LateMinutes == 0).Which.Words.Should().Be("leave Milestone for later");
        plan.WaysOut.Should().NotContain(way => way.Change is Change.MoreSittings, "no sitting helps what dries");
    }

    [Fact]
    public void What_comes_nearest_is_told_beside_leaving_the_late_model_for_later()
    {
        var plan = Workshop.Evenings().Tool("airbrush", 1).Model("Crane", 1, r => r.Work("trim", 60), due: "2026-12-04 22:00")
            .Model("Diver", 1, r => r.Spray(Undercoat, role: LayerRole.Undercoat).Mask("suit", "suit").Spray(Boot, "boots").Unmask("suit"), due: "2026-11-30 19:05").Plan();

        plan.WaysOut.Select(way => (way.Change.GetType().Name, way.LateMinutes == 0)).Should().StartWith((nameof(Change.LeaveOut), true))
            .And.Contain((nameof(Change.Brisk), false));
    }
}
