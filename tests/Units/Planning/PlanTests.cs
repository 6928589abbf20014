using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Planning;
using static Pipeline.Tests.Units.Planning.RouteSteps;

namespace Pipeline.Tests.Units.Planning;

public class PlanTests
{
    private static readonly Paint Undercoat = Pot("slate undercoat", Lacquer, "#4a4f55");
    private static readonly Paint Brass = Mix("old brass", Pot("bright brass", Metallic, "#b58b3b", stock: 20), thinnerPercent: 20);
    private static readonly Paint Boot = Pot("wet boot", Waterborne, "#2b2a28");

    private static Workshop Divers(int count = 4, string? due = null) => Workshop.Evenings().Tool("airbrush", 1)
        .Model("Diver", count, r => r.Clean().Spray(Undercoat).Mask("soles", "boots").Spray(Brass, "suit", coats: 2).Unmask("soles").Brush(Boot, "boots").Photograph(), due);

    private static PlannedTask Task(Plan plan, string words) =>
        plan.Days.SelectMany(d => d.Sittings).SelectMany(s => s.Tasks).First(t => t.Words.StartsWith(words, StringComparison.Ordinal));

    private static PlannedSitting Evening(Plan plan, int day, int month = 12) =>
        plan.Days.Single(d => d.Date == new LocalDate(2026, month, day)).Sittings.Single();

    [Fact]
    public void A_task_says_what_to_do()
    {
        Divers().Plan().Days.SelectMany(d => d.Sittings).SelectMany(s => s.Tasks).Where(t => t.Sort == TaskSort.Step).Select(t => t.Words).Should().Equal(
            "Clean all areas",
            "Airbrush slate undercoat on all areas",
            "Mask the boots with low-tack tape (soles)",
            "Airbrush old brass on the suit, 2 coats",
            "Unmask soles",
            "Brush wet boot on the boots",
            "Photograph all areas");
    }

    [Fact]
    public void The_chain_that_makes_the_plan_long_ends_with_its_last_task() =>
        Divers().Plan().CriticalChain[^1].Should().StartWith("Wed 2 Dec 19:00 – Diver: Photograph all areas. It waits for Handleable: 'coat the boots' (Tue 1 Dec ");

    [Fact]
    public void It_begins_with_what_was_done_first() =>
        Divers().Plan().CriticalChain[0].Should().StartWith("Mon 30 Nov 19:00").And.EndWith("The first sitting begins here.");

    [Fact]
    public void A_sitting_ends_with_the_airbrush_cleaned_and_names_what_dries()
    {
        var monday = Evening(Divers().Plan(), 30, 11);
        monday.Tasks[^1].Words.Should().Be("Clean the airbrush out and put it away (it held slate undercoat)");
        monday.Tasks[^1].Sort.Should().Be(TaskSort.CloseDown);
        monday.Drying.Should().ContainSingle().Which.What.Should().Be("slate undercoat on all areas");
        monday.TakeOut.Should().Contain("slate undercoat").And.Contain("airbrush").And.Contain("to clean with: lacquer thinner");
    }

    [Fact]
    public void A_mix_is_mixed_once_with_parts_and_drops()
    {
        var mix = Evening(Divers().Plan(), 1).Mixes.Should().ContainSingle().Which;
        mix.Name.Should().Be("old brass");
        mix.Parts.Select(p => (p.Name, p.Parts)).Should().Equal(("bright brass", 4.0), ("thinner", 1.0));
        mix.Parts.Sum(p => p.Millilitres).Should().BeApproximately(mix.Millilitres, 0.02);
        mix.Parts.Should().OnlyContain(p => p.Drops == (int)Math.Round(p.Millilitres * 20));
        Task(Divers().Plan(), "Airbrush old brass").Paint!.FromMix.Should().Be(0);
    }

    [Fact]
    public void A_mix_that_does_not_keep_is_mixed_again()
    {
        var quick = Brass with { PotLife = new Drying(30) };
        var plan = Workshop.Evenings().Tool("airbrush", 1)
            .Model("Diver", 1, r => r.Spray(quick, "suit", minutes: 20).Brush(Boot, "boots", minutes: 30).Spray(quick, "suit", minutes: 20)).Plan();
        var mixes = plan.Days.SelectMany(d => d.Sittings).Single().Mixes;
        mixes.Should().HaveCount(2);
        mixes.Should().OnlyContain(m => m.UseBy != null);
    }

    [Fact]
    public void Why_a_task_waits_is_said_in_words() =>
        Task(Divers().Plan(), "Mask the boots").WhyNotEarlier.Should().StartWith("It waits for MaskSafe: 'coat all areas' (").And.EndWith("; this is the next sitting.");

    [Fact]
    public void A_task_shows_the_wait_it_starts_with_both_times()
    {
        var plan = Divers().Plan();
        var task = Task(plan, "Airbrush slate undercoat");
        var wait = task.Starts.Single(w => w.For == "MaskSafe");
        (wait.Earliest.ToInstant() - task.To.ToInstant()).Should().Be(Duration.FromHours(2));
        (wait.Comfortable.ToInstant() - task.To.ToInstant()).Should().Be(Duration.FromMinutes(6 * 60 * 0.9));
        wait.IsDefault.Should().BeTrue();
    }

    [Fact]
    public void A_mask_left_on_overnight_is_listed_with_the_time_it_must_be_off()
    {
        var plan = Workshop.Evenings().Model("Diver", 2, r => r.Mask("soles", "boots").Brush(Boot, "suit").Rest(hours: 8).Unmask("soles")).Plan();
        var mask = plan.Days[0].Sittings[0].MasksOn.Should().ContainSingle().Which;
        mask.Mask.Should().Be("soles");
        mask.ComesOff.Date.Should().Be(plan.Days[1].Date);
        mask.MustBeOffBy!.Value.ToInstant().Should().BeGreaterThan(mask.ComesOff.ToInstant());
        plan.Masks.Single().Off.ToInstant().Should().BeGreaterThanOrEqualTo(mask.ComesOff.ToInstant());
        Task(plan, "Unmask").NotLaterThan.Should().NotBeNull();
    }

    [Fact]
    public void A_step_that_only_waits_is_told_with_the_step_before_it()
    {
        var plan = Workshop.Evenings().Model("Diver", 1, r => r.Brush(Boot, "suit").Cure(DryingState.Cured).Photograph()).Plan();
        plan.Days.SelectMany(d => d.Sittings).SelectMany(s => s.Tasks).Select(t => t.Verb).Should().Equal("coat", "photograph");
        Task(plan, "Brush").Starts.Select(w => w.For).Should().Contain("cure all areas");
        (Task(plan, "Photograph").From.ToInstant() - Task(plan, "Brush").To.ToInstant()).Should().BeGreaterThan(Duration.FromDays(12));
    }

    [Fact]
    public void A_change_of_load_is_a_clean_out_and_the_first_load_is_not()
    {
        var plan = Workshop.Evenings().Tool("airbrush", 1).Model("Diver", 1, r => r.Spray(Undercoat).Spray(Boot, "boots")).Plan();
        Task(plan, "Airbrush slate").CleanOutBefore.Should().BeNull();
        Task(plan, "Airbrush wet boot").CleanOutBefore.Should().Be(new CleanOut("airbrush", "slate undercoat", 10));
        plan.Measure.CleanOuts.Should().Be(2);
    }

    [Fact]
    public void A_model_is_ready_when_its_last_coat_can_be_handled()
    {
        var finish = Workshop.Evenings().Model("Diver", 1, r => r.Brush(Boot, "suit")).Plan().Finishes.Single();
        (finish.Ready.ToInstant() - finish.LastTask.ToInstant()).Should().Be(Duration.FromMinutes(4 * 60 * 0.9));
        finish.Cured!.Value.ToInstant().Should().BeGreaterThan(finish.Ready.ToInstant());
    }

    [Fact]
    public void A_missed_due_time_is_an_error_with_the_earliest_day_and_a_plan_all_the_same()
    {
        var finding = Divers(due: "2026-12-01 20:00").Plan().Findings.Single(f => f.Level == Level.Error);
        finding.Message.Should().StartWith("Diver cannot be done by Tue 1 Dec 20:00: the earliest found is ").And.Contain(" late.");
        finding.Place.Should().Be(new Place("harbour.yaml", 2, 6));
        finding.Remedy.Should().NotBeNullOrEmpty();
    }

    [Fact]
    public void A_due_time_that_is_met_says_nothing() => Divers(due: "2026-12-20 20:00").Plan().Findings.Should().BeEmpty();

    [Fact]
    public void The_plan_begins_in_the_middle_of_a_sitting() =>
        Task(Divers().Plan("2026-11-30 20:17"), "Clean").From.LocalDateTime.Should().Be(new LocalDateTime(2026, 11, 30, 20, 17));

    [Fact]
    public void Shopping_adds_a_fifth_and_takes_mixes_apart()
    {
        var plan = Divers().Plan();
        var mix = Evening(plan, 1).Mixes.Single();
        var brass = plan.Shopping.Single(item => item.Name == "bright brass");
        brass.NeedMillilitres.Should().BeApproximately(mix.Millilitres * 0.8 * 1.2, 0.05);
        brass.StockMillilitres.Should().Be(20);
        brass.UsedIn.Should().Equal("old brass");
        plan.Shopping.Select(item => item.Name).Should().Contain("thinner").And.NotContain("old brass");
    }

    [Fact]
    public void Brisk_waits_to_the_low_figure_and_says_what_it_risks()
    {
        static Workshop Keeper() => Workshop.Evenings().Tool("airbrush", 1).Model("Keeper", 1, r => r.Spray(Undercoat).Brush(Boot, "boots"));
        Keeper().Plan().Findings.Should().BeEmpty();
        var brisk = Keeper().Brisk().Plan();
        brisk.Findings.Should().ContainSingle().Which.Level.Should().Be(Level.Warning);
        brisk.Findings[0].Message.Should().StartWith("Only ").And.Contain("'coat all areas' and 'coat the boots'").And.Contain("a usual figure, not the label's");
    }

    [Fact]
    public void Painters_keep_to_what_they_do()
    {
        var plan = Workshop.Evenings().Painter("Ana", "coat").Painter("Rui", "clean", "photograph")
            .Model("Keeper", 1, r => r.Clean().Brush(Boot).Photograph()).Plan();
        plan.Days.SelectMany(d => d.Sittings).SelectMany(s => s.Tasks.Select(t => (s.Painter, t.Verb))).Distinct()
            .Should().BeEquivalentTo([("Ana", "coat"), ("Rui", "clean"), ("Rui", "photograph")]);
    }

    [Fact]
    public void A_decided_time_is_kept()
    {
        var plan = Workshop.Evenings().Model("Keeper", 2, r => r.Clean().Brush(Boot).At("2026-12-03 20:30")).Plan();
        Task(plan, "Brush").From.LocalDateTime.Should().Be(new LocalDateTime(2026, 12, 3, 20, 30));
        Task(plan, "Brush").WhyNotEarlier.Should().Be("You have decided this time.");
    }

    [Fact]
    public void Nothing_to_do_is_an_empty_plan()
    {
        var plan = Workshop.Evenings().Plan();
        plan.Days.Should().BeEmpty();
        plan.Finishes.Should().BeEmpty();
    }

    [Fact]
    public void The_same_input_gives_the_same_plan() =>
        Divers(6, "2026-12-04 20:00").Plan().Days.Should().Equal(Divers(6, "2026-12-04 20:00").Plan().Days);
}
