using NodaTime;
using NodaTime.Text;
using Pipeline.Abstractions;
using Pipeline.Planning;
using static Pipeline.Tests.Units.Planning.RouteSteps;

namespace Pipeline.Tests.Units.Planning;

/// <summary>Why a plan is as it is. From Monday 30 November 18:00, with evenings from 19:00 to 22:00.</summary>
public class ReasonsTests
{
    private static readonly Paint Undercoat = Pot("slate undercoat", Lacquer);
    private static readonly Paint Boot = Pot("wet boot", Waterborne);
    private static readonly LocalDateTimePattern Begin = LocalDateTimePattern.CreateWithInvariantCulture("ddd d MMM HH:mm").WithTemplateValue(new LocalDateTime(2026, 1, 1, 0, 0));

    // the undercoat on Monday, the mask when it is mask-safe, boots after that
    private static Workshop Masked() => Workshop.Evenings().Tool("airbrush", 1)
        .Model("Diver", 2, r => r.Spray(Undercoat, role: LayerRole.Undercoat).Mask("suit", "suit").Spray(Boot, "boots").Unmask("suit").Photograph())
        .Model("Crane", 1, r => r.Work("trim", 10));

    private static PlanReasons Reasons(Workshop workshop) => ((PlanOutcome.Planned)workshop.Outcome()).Reasons;

    [Fact]
    public void A_step_says_when_it_is_planned_and_what_holds_it_back()
    {
        var mask = Reasons(Masked()).OfStep(0, 1);

        var run = mask.Runs.Should().ContainSingle().Which;
        run.From.Date.Should().Be(new LocalDate(2026, 12, 1));
        run.Units.Should().Be("no. 1-2 of 2");
        run.Painter.Should().Be("painter 1");
        run.Because.Should().StartWith("It waits for MaskSafe: 'undercoat all areas'");
        mask.OnChain.Should().BeTrue();
    }

    [Fact]
    public void A_step_says_what_it_holds_back_and_whether_that_binds()
    {
        var held = Reasons(Masked()).OfStep(0, 0).HoldsBack;

        held.Should().Contain(each => each.What == "'mask the suit'" && each.IsBinding).Which.Because.Should().Contain("MaskSafe");
        held.Select(each => each.From.ToInstant()).Should().BeInAscendingOrder();
        Reasons(Masked()).OfStep(0, 4).HoldsBack.Should().OnlyContain(each => each.What.Contains("ready", StringComparison.Ordinal), "the photograph comes last");
    }

    [Fact]
    public void A_models_slack_reaches_from_when_hands_are_done_to_its_due_time()
    {
        var late = Reasons(Workshop.Evenings().Tool("airbrush", 1)
            .Model("Token", 3, r => r.Work("trim", 10).Photograph(putAway: 12), due: "2026-12-02 20:00")
            .Model("Diver", 2, r => r.Work("trim", 150).Work("file", 150).Work("fill", 150))).Late(model: null);

        var token = late.Models.Single(model => model.Finish.Model == "Token");
        token.Slack.Should().BeGreaterThan(Duration.Zero);
        Math.Floor(token.Slack.TotalMinutes).Should().Be(Math.Floor((token.Finish.Due!.Value.ToInstant() - token.Finish.Ready.ToInstant()).TotalMinutes), "putting away comes before it is due too");
    }

    [Fact]
    public void A_model_is_ready_everywhere_at_the_moment_the_plan_says()
    {
        var outcome = (PlanOutcome.Planned)Workshop.Evenings().Model("Diver", 1, r => r.Work("trim", 10).Photograph(minutes: 20, putAway: 5)).Outcome();

        var ready = outcome.Reasons.OfStep(0, 1).HoldsBack.Should().ContainSingle().Subject;
        ready.From.Should().Be(outcome.Plan.Finishes[0].Ready);
        ready.Because.Should().Be("It comes with the end of 'photograph all areas' (19:40).", "trimmed, set up, photographed and put away from 19:00");
    }

    // half an hour for each, recoatable 54 min after its own coat; the second coat is set up, and begun on the first piece, before the last one is ready
    [Theory]
    [InlineData(1, 20, "with its set-up meanwhile.")]
    [InlineData(3, 20, "on no. 3, one by one.")]
    public void A_start_before_the_end_of_its_wait_says_why_that_is_right(int pieces, int minutes, string said)
    {
        var task = Workshop.In().Weekly("Mon", "18:30", "23:30").Model("Diver", pieces, r => r.Brush(Boot, minutes: minutes).Brush(Boot, minutes: minutes - (pieces * 4))).Plan("2026-11-30 18:00")
            .Days.SelectMany(day => day.Sittings).SelectMany(sitting => sitting.Tasks).Last();

        task.WhyNotEarlier.Should().StartWith("It waits for").And.Contain(", until ").And.EndWith(said);
    }

    [Fact]
    public void What_is_done_at_the_side_has_slack()
    {
        var trim = Reasons(Masked()).OfStep(1, 0);

        trim.OnChain.Should().BeFalse();
        trim.Slack.Should().BeGreaterThan(Duration.FromHours(12));
    }

    [Fact]
    public void The_chain_goes_from_the_start_to_what_is_ready_last()
    {
        var late = Reasons(Masked()).Late(model: null);

        late.Target.Model.Should().Be("Diver");
        late.Chain[0].Should().StartWith("Mon 30 Nov 19:0");
        late.Chain[^1].Should().Contain("Photograph");
        (late.Hands + late.Drying + late.Away).Should().Be(late.Span);
        late.Waits.Should().Contain(wait => wait.For == "MaskSafe");
        late.Models.Select(model => model.Finish.Model).Should().Equal("Diver", "Crane");
        late.Models[0].Slack.Should().Be(Duration.Zero);
    }

    [Fact]
    public void The_chain_of_one_model_is_its_own()
    {
        var late = Reasons(Masked()).Late("Crane");

        late.Target.Model.Should().Be("Crane");
        late.Chain[^1].Should().Contain("Crane");
        late.Span.Should().BeLessThan(Duration.FromHours(3));
    }

    [Fact]
    public void The_sittings_that_are_filled_to_the_end_are_named()
    {
        var late = Reasons(Workshop.Evenings().Model("Diver", 7, r => r.Work("trim", 60))).Late(model: null);

        late.Sittings.Select(sitting => sitting.Date.Day).Should().Equal(30, 1);
    }

    [Fact]
    public void A_chain_never_goes_back_in_time()
    {
        foreach (var count in new[] { 1, 2, 5 })
        {
            var outcome = (PlanOutcome.Planned)Workshop.Evenings().Tool("airbrush", 1)
                .Model("Diver", count, r => r.Spray(Undercoat, role: LayerRole.Undercoat).Mask("suit", "suit", material: "low-tack tape").Spray(Boot, "boots").Unmask("suit"))
                .Model("Crane", count, r => r.Spray(Boot).Photograph()).Outcome();
            outcome.Reasons.Late(null).Chain.Select(line => Begin.Parse(line.Split('–')[0].Trim()).Value).Should().BeInAscendingOrder().And.NotBeEmpty();
        }
    }

    // brushed from 19:00 to 19:52, recoatable (nine tenths of an hour later) at 20:46, and what is left is not enough for an undercoat of that size
    private static Workshop Wet(string? due = null) => Workshop.Evenings().Model("Diver", 1, r => r.Brush(Boot, minutes: 50).Spray(Undercoat, minutes: 80), due);

    [Fact]
    public void A_wait_that_leaves_too_little_of_the_sitting_is_why_and_not_the_work_long_before_it()
    {
        var plan = Wet().Plan();

        const string Why = "until Mon 30 Nov 20:46, and after that too little was left of the sitting.";
        plan.Days[1].Sittings[0].Tasks[0].WhyNotEarlier.Should().StartWith("It waits for").And.EndWith(Why);
        plan.CriticalChain[1].Should().EndWith(Why);
        Reasons(Wet()).OfStep(0, 1).Runs[0].Because.Should().EndWith(Why);
        Wet(due: "2026-11-30 22:00").Plan().Findings.Single(finding => finding.Level == Level.Error).Message.Should().EndWith(Why);
    }

    [Fact]
    public void Work_that_goes_on_after_the_wait_is_what_leaves_too_little() =>
        Workshop.Evenings().Model("Crane", 1, r => r.Work("trim", 160).Photograph(minutes: 160)).Plan()
            .Days.SelectMany(day => day.Sittings).SelectMany(sitting => sitting.Tasks).Single(task => task.Verb == "photograph")
            .WhyNotEarlier.Should().StartWith("After ").And.EndWith("too little was left of the sitting.");

    [Fact]
    public void A_painter_who_has_sat_before_is_not_said_not_to_have()
    {
        var plan = Workshop.Evenings().PainterOn("Tue", "Rui").Painter("Ana").Model("Diver", 1, r => r.Work("trim", 170)).Model("Crane", 2, r => r.Work("trim", 170)).Plan();

        var tasks = plan.Days.SelectMany(day => day.Sittings).SelectMany(sitting => sitting.Tasks.Select(task => (sitting.Painter, task.WhyNotEarlier))).ToList();
        tasks.Where(task => task.Painter == "Rui").Should().ContainSingle().Which.WhyNotEarlier.Should().Be("Rui does not sit at the bench earlier.");
        tasks.Where(task => task.Painter == "Ana").Select(task => task.WhyNotEarlier[..5]).Should().Equal("The f", "After");
    }

    [Theory]
    [InlineData("2026-11-30 22:00", "by Mon 30 Nov 22:00: the earliest found is Tue 1 Dec 20:34,")]
    [InlineData("2020-12-06 18:00", "by Sun 6 Dec 2020 18:00: the earliest found is Tue 1 Dec 2026 20:34,")]
    public void A_late_model_is_ready_when_the_head_of_the_plan_says_so(string due, string said)
    {
        // a quarter of an hour to put away after the last photograph
        var plan = Workshop.Evenings().Model("Diver", 1, r => r.Work("trim", 170).Photograph(minutes: 74, putAway: 15), due).Plan();

        plan.Finishes[0].Ready.TimeOfDay.Should().Be(new LocalTime(20, 34));
        plan.Findings.Single(finding => finding.Level == Level.Error).Message.Should().Contain(said);
    }
}
