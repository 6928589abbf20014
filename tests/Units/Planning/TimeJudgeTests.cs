using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Planning;
using Pipeline.Surfaces;
using static Pipeline.Tests.Units.Planning.RouteSteps;

namespace Pipeline.Tests.Units.Planning;

/// <summary>Waits against known times. The wait between the two coats is 2–4 h unless a case says otherwise.</summary>
public class TimeJudgeTests
{
    private static readonly Paint Boot = Pot("wet boot", Waterborne);
    private static readonly Instant Noon = Instant.FromUtc(2026, 12, 1, 12, 0);

    [Theory]
    [InlineData(60, Level.Error)]
    [InlineData(119.4, Level.Error)]
    [InlineData(120, Level.Warning)]
    [InlineData(215, Level.Warning)]
    [InlineData(216, null)] // nine tenths of four hours
    [InlineData(5000, null)]
    public void A_least_wait_has_three_zones(double elapsed, Level? level) =>
        Levels(new Span.AtLeast(DryingRange.Hours(2, 4)), elapsed).Should().Equal(level is { } one ? [one] : []);

    [Theory]
    [InlineData(1440, null)]
    [InlineData(1441, Level.Warning)]
    [InlineData(2880, Level.Warning)]
    [InlineData(2881, Level.Error)]
    public void A_greatest_wait_warns_past_its_limit_and_is_an_error_past_the_hard_one(double elapsed, Level? level) =>
        Levels(new Span.AtMost(Drying.Hours(24), Drying.Hours(48)), elapsed).Should().Equal(level is { } one ? [one] : []);

    [Fact]
    public void Without_a_hard_limit_it_stays_a_warning() => Levels(new Span.AtMost(Drying.Hours(24)), 100_000).Should().Equal(Level.Warning);

    [Theory]
    [InlineData(30, null)]
    [InlineData(60, null)]
    [InlineData(61, Level.Error)]
    [InlineData(24 * 60, Level.Warning)]
    [InlineData(44 * 60, null)]
    public void Within_the_hour_or_after_it_has_dried_through(double elapsed, Level? level) =>
        Levels(new Span.WithinOrAfter(new Drying(60), DryingRange.Hours(24, 48)), elapsed).Should().Equal(level is { } one ? [one] : []);

    [Fact]
    public void What_is_only_risky_never_gets_graver() =>
        Levels(new Span.AtLeast(DryingRange.Hours(2, 4)), 10, gravest: Level.Warning).Should().Equal(Level.Warning);

    [Fact]
    public void A_cold_bench_stretches_the_figure()
    {
        var span = new Span.AtLeast(DryingRange.Hours(2, 4));
        Levels(span, 300, carrier: Carrier.Water).Should().BeEmpty();
        Levels(span, 300, carrier: Carrier.Water, workshop: w => w.Air(15, 50)).Should().Equal(Level.Warning); // 1.65 times: 3.3–6.6 h
        Levels(span, 180, carrier: Carrier.Water, workshop: w => w.Air(15, 50)).Should().Equal(Level.Error);
    }

    [Fact]
    public void The_message_says_how_long_it_was_and_how_long_it_takes()
    {
        var finding = Judge(new Span.AtLeast(DryingRange.Hours(2, 4)), 90).Single();
        finding.Message.Should().Be("Only 90 min between 'coat the suit' and 'coat the boots'; recoatable takes 2–4 h (a usual figure, not the label's). It lifts.");
        finding.Rule.Should().Be("waits");
        finding.Place.Line.Should().Be(102);
        finding.Related.Should().ContainSingle().Which.Should().Be(new Related(new Place("harbour.yaml", 101, 13), "coat the suit, Tue 1 Dec 12:00"));
        finding.Model.Should().Be("Crane");
        finding.Remedy.Should().Be("Wait.");
    }

    [Fact]
    public void A_step_before_the_one_it_waits_for_is_told_as_such() =>
        Judge(new Span.AtLeast(DryingRange.Hours(2, 4)), -60).Single().Message.Should().StartWith("'coat the boots' comes 60 min before 'coat the suit' is done; ");

    [Fact]
    public void Of_several_units_the_worst_speaks_once()
    {
        var walked = Between(new Span.AtLeast(DryingRange.Hours(2, 4)), Carrier.None, Level.Error, count: 3, w => w);
        var times = new KnownTimes(Enumerable.Range(0, 3).SelectMany(unit => Pair(unit, 230 - (60 * unit))));
        TimeJudge.Judge(walked, times).Single().Message.Should().Contain("on no. 3").And.Contain("Only 110 min");
    }

    [Fact]
    public void What_is_not_known_is_not_judged() =>
        TimeJudge.Judge(Between(new Span.AtLeast(DryingRange.Hours(2, 4)), Carrier.None, Level.Error, 1, w => w), new KnownTimes(Pair(0, 1).Take(1))).Should().BeEmpty();

    [Theory]
    [InlineData("2026-12-01 19:29", Level.Error)]
    [InlineData("2026-12-01 19:37", Level.Warning)]
    [InlineData("2026-12-01 20:30", null)]
    public void Two_decided_times_are_judged_before_any_plan(string second, Level? level)
    {
        // brushed from 19:02 to 19:12, recoatable after 20–60 min
        var pinned = Workshop.Evenings().Model("Crane", 1, r => r.Brush(Boot, "suit", minutes: 10).At("2026-12-01 19:00").Brush(Boot, "suit", minutes: 5).At(second));
        var findings = TimeJudge.JudgePins(pinned.Walked());
        findings.Select(f => f.Level).Should().Equal(level is { } one ? [one] : []);
        pinned.Outcome().Should().BeOfType(level == Level.Error ? typeof(PlanOutcome.NoPlan) : typeof(PlanOutcome.Planned));
    }

    [Fact]
    public void Work_between_two_decided_times_must_fit()
    {
        var pinned = Workshop.Evenings().Model("Crane", 1, r => r
            .Work("trim", minutes: 10, on: "suit").At("2026-12-01 19:00").Brush(Boot, "suit", minutes: 30).Work("trim", minutes: 5, on: "suit").At("2026-12-01 19:20"));
        var finding = TimeJudge.JudgePins(pinned.Walked()).Single();
        finding.Message.Should().Be("'trim the suit' is set for Tue 1 Dec 19:20, but what comes after 'trim the suit' takes until Tue 1 Dec 19:40 even with the shortest waits.");
        finding.Level.Should().Be(Level.Error);
    }

    [Fact]
    public void A_decided_time_that_leaves_room_only_for_the_shortest_wait_is_planned_and_warned_about()
    {
        var plan = Workshop.Evenings().Model("Crane", 1, r => r.Brush(Boot, "suit", minutes: 10).Brush(Boot, "suit", minutes: 5).At("2026-12-01 19:45"))
            .Plan("2026-12-01 19:00");
        plan.Findings.Should().ContainSingle().Which.Level.Should().Be(Level.Warning);
    }

    private static List<Level> Levels(Span span, double elapsed, Carrier carrier = Carrier.None, Level gravest = Level.Error, Func<Workshop, Workshop>? workshop = null) =>
        [.. Judge(span, elapsed, carrier, gravest, workshop).Select(f => f.Level)];

    private static Sequence<Finding> Judge(Span span, double elapsed, Carrier carrier = Carrier.None, Level gravest = Level.Error, Func<Workshop, Workshop>? workshop = null) =>
        TimeJudge.Judge(Between(span, carrier, gravest, 1, workshop ?? (w => w)), new KnownTimes(Pair(0, elapsed)));

    private static IEnumerable<KnownTime> Pair(int unit, double elapsed) =>
    [
        new(0, 0, unit, Noon - Duration.FromMinutes(10), Noon),
        new(0, 1, unit, Noon + Duration.FromMinutes(elapsed), Noon + Duration.FromMinutes(elapsed + 10)),
    ];

    private static Walked Between(Span span, Carrier carrier, Level gravest, int count, Func<Workshop, Workshop> workshop) =>
        workshop(Workshop.Evenings()).Model("Crane", count, r => r.Brush(Boot, "suit").Brush(Boot, "boots")).Walked(new Waits(span, carrier, gravest));

    private sealed class Waits(Span span, Carrier carrier, Level gravest) : Rule
    {
        public override string Name => "waits";

        public override string Summary => "The wait of the case.";

        public override string Source => "the case";

        public override IEnumerable<Verdict> JudgeRoute(WalkedSteps route) =>
        [
            new Verdict.Needs { Step = 1, Since = 0, Span = span, Carrier = carrier, Gravest = gravest, For = "recoatable", Message = "It lifts.", Remedy = "Wait." },
        ];
    }
}
