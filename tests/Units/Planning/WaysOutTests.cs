using Pipeline.Abstractions;
using Pipeline.Planning;
using static Pipeline.Tests.Units.Planning.RouteSteps;

namespace Pipeline.Tests.Units.Planning;

/// <summary>What gets a late batch done in time. From Monday 30 November 18:00, with evenings from 19:00 to 22:00 unless said.</summary>
public class WaysOutTests
{
    private static readonly Paint Undercoat = Pot("slate undercoat", Lacquer);
    private static readonly Paint Boot = Pot("wet boot", Waterborne);

    [Fact]
    public void In_time_there_is_nothing_to_look_for() =>
        Workshop.Evenings().Model("Diver", 1, r => r.Work("trim", 60), due: "2026-12-04 22:00").Plan().WaysOut.Should().BeEmpty();

    [Fact]
    public void A_sitting_on_a_free_day_in_the_usual_hours()
    {
        // 5 h of trimming, evenings of 3 h on Monday and Thursday only, due on Wednesday
        var ways = Workshop.In().Weekly("Mon Thu", "19:00", "22:00").Model("Diver", 5, r => r.Work("trim", 60), due: "2026-12-02 23:00").Plan().WaysOut;

        var sittings = ways.Select(way => way.Change).OfType<Change.MoreSittings>().ToList();
        sittings.Should().HaveCount(2).And.OnlyContain(more => more.Sittings.Count == 1);
        sittings.Select(more => (more.Sittings[0].From.Day, more.Sittings[0].From.Hour, more.Sittings[0].Minutes)).Should().BeEquivalentTo([(1, 19, 180L), (2, 19, 180L)]);
        ways.Should().OnlyContain(way => way.LateMinutes == 0);
        ways.First(way => way.Change is Change.MoreSittings).Words.Should().StartWith("one more sitting, ").And.EndWith(" 19:00–22:00");
    }

    [Fact]
    public void As_many_sittings_as_it_takes_and_no_more()
    {
        // 8 h to do by Sunday, 3 h on Monday: two of the five free evenings
        var ways = Workshop.In().Weekly("Mon", "19:00", "22:00").Model("Diver", 8, r => r.Work("trim", 60), due: "2026-12-06 22:00").Plan().WaysOut;

        ways.Select(way => way.Change).OfType<Change.MoreSittings>().Should().ContainSingle().Which.Sittings.Should().HaveCount(2);
    }

    [Fact]
    public void Where_every_day_has_a_sitting_one_sits_down_earlier_or_longer()
    {
        var ways = Workshop.Evenings().Model("Diver", 4, r => r.Work("trim", 60), due: "2026-12-01 19:00").Plan().WaysOut;

        // an hour from when the plan begins on Monday, or the two hours before it is due on Tuesday
        ways.Select(way => way.Words).Where(words => words.Contains("sitting", StringComparison.Ordinal)).Should().Equal(
            "one more sitting, Mon 30 Nov 18:00–19:00", "one more sitting, Tue 1 Dec 17:00–19:00");
    }

    [Fact]
    public void A_second_painter_for_one_evening()
    {
        var ways = Workshop.In().Weekly("Mon Tue Wed Thu Fri Sat Sun", "18:00", "22:30").Model("Diver", 6, r => r.Work("trim", 60)).Model("Crane", 6, r => r.Work("trim", 60), due: "2026-12-01 23:00").Plan().WaysOut;

        ways.Should().BeEmpty("the crane alone is due, and comes first");
        ways = Workshop.In().Weekly("Mon Tue Wed Thu Fri Sat Sun", "18:00", "22:30")
            .Model("Diver", 6, r => r.Work("trim", 60), due: "2026-12-01 23:00").Model("Crane", 6, r => r.Work("trim", 60), due: "2026-12-01 23:00").Plan().WaysOut;
        var helper = ways.First(way => way.Change is Change.OneMorePainter);
        helper.Words.Should().BeOneOf("a second painter on Mon 30 Nov", "a second painter on Tue 1 Dec");
        helper.LateMinutes.Should().Be(0);
    }

    [Fact]
    public void Brisk_at_the_step_that_waits_longest()
    {
        // boots are trimmed meanwhile; only the mask waits for the undercoat, comfortably until the day after
        var workshop = Workshop.Evenings().Tool("airbrush", 1).Model(
            "Diver", 1, r => r.Spray(Undercoat, role: LayerRole.Undercoat).Mask("suit", "suit").Spray(Boot, "boots").Unmask("suit"), due: "2026-12-01 19:40");
        var plan = workshop.Plan();

        plan.WaysOut[0].Words.Should().Be("follow at the low drying figure (pace: brisk) at 'mask the suit' on Diver");
        plan.WaysOut[0].LateMinutes.Should().Be(0);
    }

    [Theory]
    [InlineData("first worms", "'first worms' (mask the suit)")]
    [InlineData("suit", "'mask the suit' (line 102)")]
    public void Of_two_steps_that_are_called_the_same_it_is_said_which(string mask, string said)
    {
        var plan = Workshop.Evenings().Tool("airbrush", 1).Model(
            "Diver", 1, r => r.Spray(Undercoat, role: LayerRole.Undercoat).Mask(mask, "suit").Spray(Boot, "boots").Unmask(mask).Mask("second worms", "suit").Unmask("second worms"), due: "2026-12-01 19:40").Plan();

        plan.WaysOut[0].Words.Should().Be($"follow at the low drying figure (pace: brisk) at {said} on Diver");
    }

    [Fact]
    public void What_is_said_to_be_in_time_is_in_time_when_the_file_says_so()
    {
        Workshop Late() => Workshop.In().Weekly("Mon Thu", "19:00", "22:00").Model("Diver", 5, r => r.Work("trim", 60), due: "2026-12-02 23:00");
        var way = Late().Plan().WaysOut.First(way => way.Change is Change.MoreSittings);
        var sitting = ((Change.MoreSittings)way.Change).Sittings[0];

        var changed = Late().On($"{sitting.From.Date:uuuu-MM-dd}", $"{sitting.From:HH:mm}", $"{sitting.To:HH:mm}").Plan();

        changed.Finishes[0].Ready.Should().Be(way.Ready);
        changed.WaysOut.Should().BeEmpty();
    }

    [Fact]
    public void A_model_left_for_later()
    {
        var plan = Workshop.In().On("2026-11-30", "19:00", "22:00").On("2026-12-10", "19:00", "22:00")
            .Model("Diver", 2, r => r.Work("trim", 60), due: "2026-12-01 20:00").Model("Crane", 2, r => r.Work("trim", 60), due: "2026-12-01 20:00").Plan();

        plan.WaysOut.Should().Contain(way => way.Change is Change.LeaveOut).Which.Words.Should().BeOneOf("leave Diver for later", "leave Crane for later");
        plan.WaysOut[^1].Change.Should().BeOfType<Change.LeaveOut>("it costs most");
    }

    [Fact]
    public void Where_nothing_helps_the_nearest_is_told_with_what_is_still_missing()
    {
        // forty hours until tomorrow
        var plan = Workshop.Evenings().Model("Diver", 40, r => r.Work("trim", 60), due: "2026-12-01 22:00").Plan();

        plan.WaysOut.Should().NotBeEmpty().And.OnlyContain(way => way.LateMinutes > 0);
        plan.WaysOut.Select(way => way.LateMinutes).Should().BeInAscendingOrder();
    }

    [Fact]
    public void The_same_question_has_the_same_answer()
    {
        Sequence<WayOut> Ways() => Workshop.In().Weekly("Mon", "19:00", "22:00").Model("Diver", 8, r => r.Work("trim", 60), due: "2026-12-06 22:00").Plan().WaysOut;

        Ways().Should().Equal(Ways());
    }
}
