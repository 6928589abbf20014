using Pipeline.Abstractions;
using Pipeline.Engine;
using Pipeline.Planning;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Planning;

/// <summary>Rules that look at a plan, and at what has been decided before there is one.</summary>
public sealed class PlanRuleTests
{
    private static string Batch(string top = "", string model = "", string at = "") => $$"""
        batch: Example
        due: 2026-12-02 20:30
        bench:
          zone: Europe/Lisbon
          sittings: [{ days: mon-sun, from: 19:00, to: 21:00 }]
        {{top}}
        paints:
          slate undercoat: { family: acrylic lacquer, sheen: matt, colour: "#4a4f55" }
          clear w satin:   { family: waterborne varnish, sheen: satin, clear: yes }
        kits:
          - kit: Example
            models:
              - model: Example
                material: styrene
                areas: { hull: 20 cm² }
                {{model}}
                route:
                  - undercoat: all
                    with: slate undercoat
                    by: brush
                  - varnish: all
                    with: clear w satin
                    by: brush
                    {{at}}
        """;

    [Fact]
    public void A_due_time_is_met_by_a_piece_for_display_and_not_by_the_same_one_for_play()
    {
        Check.Planned(Batch()).Should().BeEmpty();

        var finding = Check.Planned(Batch(model: "for: play")).Single(each => each.Rule == "due-too-soon");

        finding.Level.Should().Be(Level.Error);
        finding.Message.Should().Contain("when its last coat has cured");
    }

    [Theory]
    [InlineData("allow: { due-too-soon: it travels in a box that touches nothing }", "")]
    [InlineData("", "allow: { due-too-soon: it travels in a box that touches nothing }")]
    public void It_is_silenced_at_the_batch_or_the_model_like_any_other(string top, string allow)
    {
        var finding = Check.Planned(Batch(top, "for: packing\n        " + allow)).Should().ContainSingle().Subject;

        finding.Silenced.Should().Be("it travels in a box that touches nothing");
    }

    [Fact]
    public void A_silence_of_it_is_never_said_to_be_without_effect_since_no_plan_is_known_yet() =>
        Check.File(Batch("allow: { sitting-too-full: we are two that week }")).Should().BeEmpty();

    [Fact]
    public void A_decided_last_coat_is_judged_before_there_is_a_plan()
    {
        Check.File(Batch(at: "at: 2026-12-01 19:00")).Should().BeEmpty();
        Check.File(Batch(at: "at: 2026-12-02 20:00")).Should().ContainSingle().Which.Rule.Should().Be("due-too-soon");
    }

    [Fact]
    public void What_has_to_follow_a_decided_step_is_counted_in()
    {
        var undercoatAt = Batch().Replace("by: brush\n          - varnish", "by: brush\n            at: 2026-12-02 19:50\n          - varnish", StringComparison.Ordinal);
        undercoatAt.Should().Contain("at: ", "or the case shows nothing");

        var finding = Check.File(undercoatAt).Should().ContainSingle().Subject;

        finding.Rule.Should().Be("due-too-soon");
        finding.Level.Should().Be(Level.Error);
    }

    [Fact]
    public void A_due_time_that_decided_starts_miss_is_no_reason_against_a_plan_that_says_so() =>
        Stages.Check([new SourceText("case.yaml", Batch(at: "at: 2026-12-02 20:00"))], Check.Trade).Sound.Should().NotBeNull();

    [Fact]
    public void A_rule_of_plans_that_fails_is_one_finding_beside_the_plan()
    {
        var trade = Check.Trade with { Rules = Check.Trade.Rules.With(new Brought<Rule>("Harbour", new Trips())) };

        var outcome = Planner.Plan(Check.Walked(Batch()), trade, new PlanRequest(NodaTime.Instant.FromUtc(2026, 11, 30, 18, 0), SearchEffort.Quick));

        ((PlanOutcome.Planned)outcome).Plan.Findings.Should().ContainSingle().Which.Message.Should().Contain("'trips' of the plugin 'Harbour'");
    }

    private sealed class Trips : PlanRule
    {
        public override string Name => "trips";

        public override string Summary => "Trips over its own feet.";

        public override string Source => "invented";

        public override IEnumerable<BatchVerdict> JudgePlan(PlanView plan) => throw new InvalidOperationException("ouch");
    }
}
