using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Planning;
using Pipeline.Workflows;
using static Pipeline.Tests.Units.Planning.RouteSteps;

namespace Pipeline.Tests.Units.Planning;

/// <summary>Who sits at the bench and what stands on it, and what a plan makes of that. From Monday 30 November 18:00.</summary>
public class BenchTests
{
    private static readonly Paint Undercoat = Pot("slate undercoat", Lacquer);
    private static readonly Paint Boot = Pot("wet boot", Waterborne);

    [Theory]
    [InlineData("Wed")]
    [InlineData("2026-12-02")]
    public void A_painter_sits_there_only_on_the_days_they_come(string day)
    {
        var plan = Workshop.Evenings().PainterOn("Mon", "Ana").PainterOn(day, "Rui").Model("Diver", 5, r => r.Work("trim", 60)).Plan();

        Sittings(plan).Select(s => (s.Painter, s.From.Day)).Should().Equal(("Ana", 30), ("Rui", 2));
    }

    [Fact]
    public void A_step_may_be_brisk_on_its_own()
    {
        Workshop Masking(Pace pace) => Workshop.Evenings().Tool("airbrush", 1).Model(
            "Diver", 1, r => r.Spray(Undercoat, role: LayerRole.Undercoat).Mask("suit", "suit").Paced(pace).Spray(Boot, "boots").Unmask("suit"));
        ZonedDateTime Masked(Pace pace) => Sittings(Masking(pace).Plan()).SelectMany(s => s.Tasks).Single(t => t.Verb == "mask").From;

        Masked(Pace.Brisk).ToInstant().Should().BeLessThan(Masked(Pace.Comfortable).ToInstant());
        Masking(Pace.Brisk).Plan().Findings.Should().Contain(finding => finding.Level == Level.Warning, "what is risked is said");
    }

    [Fact]
    public void A_comfortable_step_in_a_brisk_batch_stays_comfortable()
    {
        var plan = Workshop.Evenings().Brisk().Tool("airbrush", 1)
            .Model("Diver", 1, r => r.Spray(Undercoat, role: LayerRole.Undercoat).Mask("suit", "suit").Paced(Pace.Comfortable).Spray(Boot, "boots").Unmask("suit")).Plan();

        plan.Findings.Should().NotContain(finding => finding.Message.Contains("'mask the suit'", StringComparison.Ordinal));
    }

    [Fact]
    public void Who_may_do_what_does_it()
    {
        var plan = Workshop.Evenings().Painter("Ana", "trim").Painter("Rui", "coat").Tool("airbrush", 1)
            .Model("Diver", 3, r => r.Work("trim", 10).Spray(Boot)).Plan();

        Sittings(plan).SelectMany(s => s.Tasks.Where(task => task.Verb.Length > 0).Select(task => (s.Painter, task.Verb))).Distinct().Should().BeEquivalentTo([("Ana", "trim"), ("Rui", "coat")]);
    }

    [Theory]
    [InlineData(1, 5 + 60 + 60)]
    [InlineData(2, 5 + 60)]
    public void Two_airbrushes_serve_two_painters_at_once(int airbrushes, int minutes)
    {
        // five minutes to fill a clean airbrush, three of set-up
        var plan = Workshop.Evenings().Painter("Ana").Painter("Rui").Tool("airbrush", airbrushes)
            .Model("Diver", 1, r => r.Spray(Undercoat, minutes: 57)).Model("Crane", 1, r => r.Spray(Undercoat, minutes: 57)).Plan();
        var spraying = Sittings(plan).SelectMany(s => s.Tasks).Where(task => task.Sort == TaskSort.Step).ToList();

        (spraying.Max(task => task.To.ToInstant()) - spraying.Min(task => task.From.ToInstant())).TotalMinutes.Should().Be(minutes);
        spraying.Select(task => task.Tool).Distinct().Should().HaveCount(airbrushes);
    }

    [Fact]
    public void A_full_drying_rack_holds_the_next_pieces_back()
    {
        Plan Sprayed(int places) => Workshop.Evenings().Tool("airbrush", 1).Tool("drying rack", places).Model("Diver", 6, r => r.Spray(Boot)).Plan();

        Sprayed(2).Finishes[0].LastTask.ToInstant().Should().BeGreaterThan(Sprayed(6).Finishes[0].LastTask.ToInstant());
        Sittings(Sprayed(2)).SelectMany(s => s.Tasks).Should().Contain(task => task.WhyNotEarlier.Contains("The drying rack is full until", StringComparison.Ordinal));
    }

    [Fact]
    public void Ten_pieces_with_two_wet_areas_each_go_into_a_rack_of_twelve_with_two_of_another_model()
    {
        // a few seconds each: the suits are wet still when the boots and the cranes are sprayed
        double Minutes(int places)
        {
            var plan = Workshop.Evenings().Air(16, 70).Tool("airbrush", 1).Tool("drying rack", places)
                .Model("Diver", 10, r => r.Spray(Undercoat, on: "suit", minutes: 0.25).Spray(Undercoat, on: "boots", minutes: 0.25))
                .Model("Crane", 2, r => r.Spray(Undercoat, minutes: 0.25)).Plan();
            return (plan.Finishes.Max(f => f.LastTask.ToInstant()) - plan.Days[0].Sittings[0].From.ToInstant()).TotalMinutes;
        }

        Minutes(12).Should().Be(Minutes(22), "twelve pieces take twelve places");
        Minutes(11).Should().BeGreaterThan(Minutes(12));
    }

    [Fact]
    public void A_rack_of_one_holds_a_piece_with_two_wet_areas_but_no_second_piece()
    {
        Plan Sprayed(int pieces) => Workshop.Evenings().Tool("airbrush", 1).Tool("drying rack", 1)
            .Model("Diver", pieces, r => r.Spray(Undercoat, on: "suit").Spray(Undercoat, on: "boots")).Plan();

        var one = Sittings(Sprayed(1)).SelectMany(s => s.Tasks).Where(task => task.Sort == TaskSort.Step).ToList();
        (one[1].From.ToInstant() - one[0].To.ToInstant()).TotalMinutes.Should().Be(0, "the second area is sprayed at once");
        Sittings(Sprayed(2)).SelectMany(s => s.Tasks).Should().Contain(task => task.WhyNotEarlier.Contains("The drying rack is full until", StringComparison.Ordinal));
    }

    [Fact]
    public void Two_areas_of_one_piece_under_the_lamp_at_once_are_one_piece_and_two_pieces_are_two()
    {
        double Minutes(Workshop workshop)
        {
            var plan = workshop.Plan();
            return (plan.Finishes.Max(f => f.Ready.ToInstant()) - plan.Days[0].Sittings[0].From.ToInstant()).TotalMinutes;
        }

        Workshop Lamp() => Workshop.Evenings().Tool("curing lamp", 1);
        Minutes(Lamp().Model("Diver", 1, r => r.In("curing lamp", hands: 1, alone: 30, on: "suit").In("curing lamp", hands: 1, alone: 30, on: "boots"))).Should().Be(1 + 1 + 30);
        Minutes(Lamp().Model("Diver", 1, r => r.In("curing lamp", hands: 1, alone: 30)).Model("Crane", 1, r => r.In("curing lamp", hands: 1, alone: 30))).Should().Be(31 + 31);
    }

    [Fact]
    public void A_machine_runs_by_itself_and_holds_so_many_pieces()
    {
        // four pieces, a minute of hands and half an hour under the lamp each
        Plan Cured(int places) => Workshop.Evenings().Tool("curing lamp", places).Model("Diver", 4, r => r.In("curing lamp", hands: 1, alone: 30)).Plan();
        double Minutes(Plan plan) => (plan.Finishes[0].Ready.ToInstant() - plan.Days[0].Sittings[0].From.ToInstant()).TotalMinutes;

        Minutes(Cured(4)).Should().Be(4 + 30);
        Minutes(Cured(2)).Should().Be(2 + 30 + 1 + 30);
        Minutes(Cured(1)).Should().Be(4 * 31);
        Sittings(Cured(2)).SelectMany(s => s.Tasks).Should().Contain(task => task.WhyNotEarlier.Contains("The curing lamp is full until", StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_done_together_needs_a_place_for_each_piece()
    {
        Workshop Tray(int places) => Workshop.Evenings().Tool("curing lamp", places).Model("Diver", 4, r => r.In("curing lamp", hands: 3, alone: 30, together: true));

        var task = Sittings(Tray(4).Plan()).Single().Tasks.Should().ContainSingle().Which;
        (task.Units, (task.To.ToInstant() - task.From.ToInstant()).TotalMinutes).Should().Be((4, 3));
        Tray(3).NoPlan().Message.Should().Be("'cure all areas' needs 4 places of the curing lamp at once, and there are 3.");
    }

    [Fact]
    public void What_runs_by_itself_runs_through_the_night_and_a_day_of_rest()
    {
        var plan = Workshop.In().Weekly("Mon Tue Wed Thu Fri", "19:00", "22:00").Away("2026-12-01", "2026-12-01")
            .Model("Diver", 1, r => r.Work("trim", 10).Rest(hours: 20).Work("sand", 10)).Plan();

        plan.Days.Select(day => day.Date.Day).Should().Equal(30, 2);
    }

    [Fact]
    public void Even_days_come_last_unless_the_batch_asks_for_them()
    {
        // five hours of trimming in evenings of three, due after four of them
        Workshop Crew() => Workshop.Evenings().Model("Diver", 20, r => r.Work("trim", 15), due: "2026-12-03 22:00");
        int[] Filled(Workshop workshop) => [.. Sittings(workshop.Plan()).Select(s => s.AttendedMinutes)];

        Filled(Crew()).Should().Equal(180, 120);
        Sittings(Crew().Aim(BatchAim.EvenDays, BatchAim.FinishSoon, BatchAim.FewChanges, BatchAim.ShortMasks).Plan()).Last().Tasks[0].WhyNotEarlier
            .Should().EndWith("that day got no more work, to keep the days even.");
        Sittings(Crew().MostPerDay(75).Plan()).Last().Tasks[0].WhyNotEarlier.Should().EndWith("that day had as much work as 'most-per-day' allows.");
        Filled(Crew().Aim(BatchAim.FinishSoon, BatchAim.EvenDays, BatchAim.FewChanges, BatchAim.ShortMasks)).Should().Equal(150, 150);
        Filled(Crew().Aim(BatchAim.EvenDays, BatchAim.FinishSoon, BatchAim.FewChanges, BatchAim.ShortMasks)).Should().Equal(75, 75, 75, 75);
    }

    [Fact]
    public void The_aim_that_comes_first_decides()
    {
        // two loads that take turns; stripped in between, or finished an evening sooner
        Workshop Crew() => Workshop.Evenings().Tool("airbrush", 1)
            .Model("Diver", 1, r => r.Spray(Undercoat, minutes: 20).Work("sand", 20).Spray(Boot, minutes: 20).Work("polish", 20).Spray(Undercoat, minutes: 20))
            .Model("Crane", 1, r => r.Spray(Undercoat, minutes: 20).Work("sand", 20).Spray(Boot, minutes: 20).Work("polish", 20).Spray(Undercoat, minutes: 20));
        var soon = Crew().Plan();
        var few = Crew().Aim(BatchAim.FewChanges, BatchAim.FinishSoon, BatchAim.ShortMasks, BatchAim.EvenDays).Plan();

        few.Measure.CleanOuts.Should().BeLessThanOrEqualTo(soon.Measure.CleanOuts);
        few.Measure.AttendedMinutes.Should().BeLessThanOrEqualTo(soon.Measure.AttendedMinutes);
        soon.Finishes.Max(finish => finish.Ready.ToInstant()).Should().BeLessThanOrEqualTo(few.Finishes.Max(finish => finish.Ready.ToInstant()));
    }

    [Fact]
    public void Of_two_that_cannot_both_be_in_time_the_weightier_is_less_late()
    {
        string[] Late(double diver, double crane) => [.. Workshop.Evenings()
            .Model("Diver", 3, r => r.Work("trim", 60), due: "2026-11-30 22:00", weight: diver).Model("Crane", 3, r => r.Work("trim", 60), due: "2026-11-30 22:00", weight: crane)
            .Plan().Finishes.Where(finish => finish.Ready.ToInstant() > finish.Due!.Value.ToInstant()).Select(finish => finish.Model)];

        Late(1, 5).Should().Equal("Diver");
        Late(5, 1).Should().Equal("Crane");
    }

    [Fact]
    public void Each_due_time_that_is_missed_is_told_with_its_model()
    {
        var plan = Workshop.Evenings().Model("Diver", 4, r => r.Work("trim", 60), due: "2026-11-30 21:00").Model("Crane", 1, r => r.Work("trim", 60), due: "2026-12-05 12:00").Plan();

        var late = plan.Findings.Where(finding => finding.Level == Level.Error).Should().ContainSingle().Which;
        late.Message.Should().Contain("Diver").And.NotContain("Crane");
        plan.Finishes.Single(finish => finish.Model == "Crane").Due.Should().NotBeNull();
    }

    private static IEnumerable<PlannedSitting> Sittings(Plan plan) => plan.Days.SelectMany(day => day.Sittings);
}
