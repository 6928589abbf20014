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

    private static IEnumerable<PlannedSitting> Sittings(Plan plan) => plan.Days.SelectMany(day => day.Sittings);
}
