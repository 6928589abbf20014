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
        run.Units.Should().Be("units 1–2 of 2");
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
}
