using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Planning;
using static Pipeline.Tests.Units.Planning.RouteSteps;

namespace Pipeline.Tests.Units.Planning;

/// <summary>
/// Coats that must dry between, each a task of its own. From Monday 30 November 18:00, with evenings from 19:00 to 22:00. A brushed coat of
/// waterborne acrylic is recoatable after 20–60 min, comfortably after 54; a sprayed one after 15–30 min, comfortably after 27.
/// </summary>
public class CoatTests
{
    private static readonly Paint Boot = Pot("wet boot", Waterborne);
    private static readonly Paint Sky = Pot("harbour sky", Waterborne, "#80a0c0");
    private static readonly Paint Black = Pot("pier black", Lacquer, "#101010");

    private static List<PlannedTask> Tasks(Plan plan) => [.. plan.Days.SelectMany(day => day.Sittings).SelectMany(sitting => sitting.Tasks)];

    private static string[] Told(Plan plan) => [.. Tasks(plan).Select(task =>
        $"{task.From.Date.Day} {task.From.Hour:00}:{task.From.Minute:00} {task.Words}{(task.OfUnits > 1 ? $", {Phrases(task)}" : "")}")];

    private static string Phrases(PlannedTask task) => FormattableString.Invariant($"{task.FirstUnit}-{task.FirstUnit + task.Units - 1}");

    private static Workshop Diver(Action<RouteSteps> route) => Workshop.Evenings().Tool("airbrush", 1).Model("Diver", 1, route);

    [Fact]
    public void Each_coat_starts_when_the_one_before_is_recoatable() =>
        Told(Diver(r => r.Brush(Boot, minutes: 20, coats: 3).DryBetween()).Plan()).Should().Equal(
            "30 19:00 Brush wet boot on all areas, coat 1 of 3",
            "30 20:14 Brush wet boot on all areas, coat 2 of 3",
            "30 21:28 Brush wet boot on all areas, coat 3 of 3");

    [Fact]
    public void A_coat_that_no_longer_fits_the_evening_is_laid_on_the_next() =>
        Told(Diver(r => r.Work("trim", 95).Brush(Boot, minutes: 30, coats: 2).DryBetween()).Plan()).Should().Equal(
            "30 19:00 Trim all areas",
            "30 20:35 Brush wet boot on all areas, coat 1 of 2",
            "1 19:00 Brush wet boot on all areas, coat 2 of 2");

    [Fact]
    public void The_evening_says_which_coat_is_left_drying_and_why_the_next_waits()
    {
        var plan = Diver(r => r.Work("trim", 145).Brush(Boot, minutes: 30, coats: 2).DryBetween()).Plan();

        plan.Days[0].Sittings[0].Drying.Select(left => $"{left.What}: {left.For}").Should().Equal("wet boot on all areas, coat 1 of 2: recoatable");
        Tasks(plan)[^1].WhyNotEarlier.Should().Be(
            "It waits until the coat before it (Mon 30 Nov 21:57) is recoatable: that takes about 55 min, until Mon 30 Nov 22:51; this is the next sitting.");
    }

    [Fact]
    public void Each_coat_says_when_the_next_may_go_on_and_the_last_what_follows_it()
    {
        var tasks = Tasks(Diver(r => r.Brush(Boot, minutes: 20, coats: 2).DryBetween().Photograph()).Plan());

        tasks[0].Starts.Select(wait => FormattableString.Invariant($"{wait.For} {wait.Earliest.Hour}:{wait.Earliest.Minute:00} {wait.Comfortable.Hour}:{wait.Comfortable.Minute:00}"))
            .Should().Equal("coat 2 19:42 20:16");
        tasks[1].Starts.Select(wait => wait.For).Should().Equal("Handleable");
    }

    [Fact]
    public void At_a_brisk_pace_the_next_coat_follows_at_the_low_figure_and_what_that_risks_is_said()
    {
        Workshop Twice() => Diver(r => r.Brush(Boot, minutes: 20, coats: 3).DryBetween());

        Told(Twice().Brisk().Plan())[1].Should().StartWith("30 19:40 ");
        Twice().Brisk().Plan().Findings.Select(finding => (finding.Level, finding.Message)).Should().Equal(
            (Level.Warning, "Only 20 min between coats 1 and 2 of 'coat all areas'; wet boot is comfortably recoatable after 54 min."));
        Twice().Plan().Findings.Should().BeEmpty();
    }

    [Fact]
    public void In_a_cold_room_it_takes_longer()
    {
        var tasks = Tasks(Diver(r => r.Brush(Boot, minutes: 20, coats: 2).DryBetween()).Air(14, 50).Plan());
        (tasks[1].From.ToInstant() - tasks[0].To.ToInstant()).Should().BeGreaterThan(Duration.FromMinutes(54));
    }

    [Fact]
    public void Coats_that_go_on_wet_are_one_task() =>
        Told(Diver(r => r.Brush(Boot, minutes: 20, coats: 3)).Plan()).Should().Equal("30 19:00 Brush wet boot on all areas, 3 coats");

    [Fact]
    public void The_airbrush_is_not_put_away_between_coats_of_one_evening()
    {
        var plan = Diver(r => r.Spray(Sky, minutes: 10, coats: 2).DryBetween()).Plan();

        Told(plan).Should().HaveCount(3).And.HaveElementAt(2, "30 19:55 Clean the airbrush out and put it away (it held harbour sky)");
        plan.Measure.CleanOuts.Should().Be(1);
    }

    // waterborne acrylic can be worked for ten minutes; a lacquer is wetted again by what follows
    [Fact]
    public void It_is_flushed_where_it_would_stand_loaded_for_longer_than_its_paint_stays_open()
    {
        var sky = Tasks(Diver(r => r.Spray(Sky, minutes: 10, coats: 2).DryBetween()).Plan());
        sky.Select(task => task.LoadedUntil).Should().Equal(sky[1].From, null, null);
        Tasks(Diver(r => r.Spray(Black, minutes: 10, coats: 2).DryBetween()).Plan()).Should().OnlyContain(task => task.LoadedUntil == null);
        Tasks(Diver(r => r.Spray(Sky, "suit", minutes: 10).Work("trim", 4, "boots").Spray(Black, "boots")).Plan()).Should().OnlyContain(task => task.LoadedUntil == null);
    }

    [Fact]
    public void It_is_put_away_where_the_second_coat_comes_another_evening_and_clean_out_and_mix_are_counted_again()
    {
        var mix = Mix("thin sky", Sky, thinnerPercent: 20);
        var plan = Diver(r => r.Work("trim", 120).Spray(mix, minutes: 20, coats: 2).DryBetween()).Plan();

        plan.Measure.CleanOuts.Should().Be(2);
        plan.Days.SelectMany(day => day.Sittings).Select(sitting => sitting.Mixes.Single().Name).Should().Equal("thin sky", "thin sky");
    }

    [Fact]
    public void Each_coat_takes_its_share_of_the_paint()
    {
        var (two, one) = (Tasks(Diver(r => r.Brush(Boot, coats: 2).DryBetween()).Plan()), Tasks(Diver(r => r.Brush(Boot)).Plan()));
        two.Select(task => task.Paint).Should().Equal(one[0].Paint, one[0].Paint);
    }

    [Fact]
    public void While_a_coat_dries_something_else_is_done() =>
        Told(Diver(r => r.Brush(Boot, "suit", minutes: 20, coats: 2).DryBetween().Work("trim", 45, "boots")).Plan()).Should().Equal(
            "30 19:00 Brush wet boot on the suit, coat 1 of 2",
            "30 19:22 Trim the boots",
            "30 20:14 Brush wet boot on the suit, coat 2 of 2");

    [Fact]
    public void Of_many_pieces_the_first_takes_its_second_coat_as_soon_as_it_is_dry_and_none_waits_for_the_last()
    {
        var plan = Workshop.Evenings().Model("Token", 12, r => r.Brush(Boot, minutes: 6, coats: 2).DryBetween()).Plan();

        // seventy-two minutes for a coat on all of them, and the first is dry before that
        Told(plan).Should().Equal("30 19:00 Brush wet boot on all areas, coat 1 of 2, 1-12", "30 20:14 Brush wet boot on all areas, coat 2 of 2, 1-12");
    }

    [Fact]
    public void A_decided_time_is_that_of_the_first_coat() =>
        Told(Diver(r => r.Brush(Boot, minutes: 20, coats: 2).DryBetween().At("2026-12-01 21:20")).Plan()).Should().Equal(
            "1 21:20 Brush wet boot on all areas, coat 1 of 2",
            "2 19:00 Brush wet boot on all areas, coat 2 of 2");

    [Fact]
    public void What_is_decided_to_follow_waits_for_the_last_coat()
    {
        // 20 min, dry after 20 at the least, 20 min more, and dry again: not before 20:22; by 20:12 it has stood 10
        Workshop Varnished(string at) => Diver(r => r.Brush(Boot, minutes: 20, coats: 2).DryBetween().At("2026-12-01 19:00").Brush(Sky).At(at));
        Varnished("2026-12-01 20:10").NoPlan().Message.Should().Contain("Only 10 min between 'coat all areas' and 'coat all areas'");
        Told(Varnished("2026-12-01 21:30").Plan()).Should().HaveCount(3);
    }

    [Fact]
    public void A_task_is_known_by_its_coat()
    {
        var tasks = Tasks(Diver(r => r.Work("trim", 5).Brush(Boot, coats: 2).DryBetween()).Plan());
        tasks.Select(task => (task.Id, task.Coat, task.OfCoats)).Should().Equal(("diver/1/1", 1, 1), ("diver/2.1/1", 1, 2), ("diver/2.2/1", 2, 2));
    }

    [Fact]
    public void Why_a_step_is_when_it_is_tells_of_each_coat()
    {
        var outcome = (PlanOutcome.Planned)Diver(r => r.Brush(Boot, minutes: 20, coats: 2).DryBetween().Photograph()).Outcome();
        var reasons = outcome.Reasons.OfStep(0, 0);

        reasons.Runs.Select(run => run.Coat).Should().Equal("coat 1 of 2", "coat 2 of 2");
        reasons.HoldsBack.Select(held => held.What).Should().Equal("'photograph all areas'", "Diver being ready");
        outcome.Reasons.OfStep(0, 1).Runs[0].Because.Should().StartWith("It waits for Handleable: coat 2 of 'coat all areas' (");
    }

    [Fact]
    public void Keeping_to_a_plan_keeps_each_coat_where_it_was()
    {
        Workshop Crew(int lanterns) => Diver(r => r.Work("trim", 95).Brush(Boot, minutes: 30, coats: 2).DryBetween())
            .Model("Crane", 2, r => r.Spray(Black, coats: 2).DryBetween().Photograph()).Model("Lantern", lanterns, r => r.Work("trim", 5));
        var before = Crew(1).Plan();
        var after = ((PlanOutcome.Planned)Planner.Plan(Crew(2).Walked(), Workshop.Trade([]), new PlanRequest(Crew(2).At("2026-11-30 18:00"), SearchEffort.Quick, Keep: WrittenPlan.Of(before)))).Plan;

        after.Kept!.Moves.Where(move => move.IsToAnotherSitting).Should().BeEmpty();
        // the lantern that is new joins the other
        after.Kept.Added.Should().BeEmpty();
        after.Kept.Gone.Should().BeEmpty();
    }

    [Fact]
    public void Of_two_plans_a_coat_more_is_new_and_the_others_are_where_they_were()
    {
        Plan Laid(int coats) => Diver(r => r.Brush(Boot, minutes: 20, coats: coats).DryBetween()).Plan();
        var both = PlanComparison.Of(WrittenPlan.Of(Laid(2)), WrittenPlan.Of(Laid(3)));

        both.Added.Select(task => task.Coat).Should().Equal(3);
        both.Unmoved.Should().Be(2);
    }

    [Fact]
    public void Where_it_is_late_the_wait_between_coats_may_be_cut_short()
    {
        var late = Workshop.In().On("2026-11-30", "19:00", "21:00").On("2026-12-02", "19:00", "21:00").Model(
            "Diver", 1, r => r.Brush(Boot, minutes: 30, coats: 2).DryBetween(), due: "2026-11-30 23:59").Model("Crane", 1, r => r.Work("trim", 25)).Plan();
        late.WaysOut.Select(way => way.Words).Should().Contain("follow at the low drying figure (pace: brisk) at 'coat all areas' on Diver");
    }
}
