using System.Text.RegularExpressions;
using Pipeline.Abstractions;
using Pipeline.Planning;
using static Pipeline.Tests.Units.Planning.RouteSteps;

namespace Pipeline.Tests.Units.Planning;

/// <summary>Why a decided time cannot be kept. From Monday 30 November 18:00, with evenings from 19:00 to 22:00 unless said.</summary>
public partial class DecidedTimesTests
{
    private static readonly Paint Boot = Pot("wet boot", Waterborne);

    [Theory]
    [InlineData("2026-12-01 09:00", "no sitting is open then; the one before ends Mon 30 Nov 22:00, the next begins 19:00")]
    [InlineData("2026-12-05 14:30", "no sitting is open then; the one before ends Fri 4 Dec 22:00, the next begins Mon 7 Dec 19:00")]
    [InlineData("2026-11-30 18:30", "no sitting is open then; the next begins 19:00")]
    [InlineData("2026-12-01 21:30", "it needs 40 min, and that sitting has only 30 min left then")]
    public void When_nobody_sits_or_not_for_long_enough(string at, string why) =>
        Workshop.Evenings().Model("Crane", 1, r => r.Work("trim", minutes: 40).At(at)).NoPlan()
            .Message.Should().EndWith($", but that cannot be kept: {why}.").And.StartWith("'trim all areas' is set for ");

    [Fact]
    public void When_who_does_it_is_not_there() =>
        Workshop.Evenings().PainterOn("Mon", "Ana").PainterOn("Wed", "Rui").Model("Crane", 1, r => r.Work("trim", minutes: 20).At("2026-12-01 19:30")).NoPlan()
            .Message.Should().EndWith("cannot be kept: Ana and Rui do not sit at the bench then.");

    [Fact]
    public void When_something_else_is_set_for_the_same_time() =>
        Workshop.Evenings().Model("Crane", 1, r => r.Work("trim", minutes: 60).At("2026-12-01 19:30"))
            .Model("Diver", 1, r => r.Work("sand", minutes: 30).At("2026-12-01 20:00")).NoPlan()
            .Message.Should().Be("'sand all areas' is set for Tue 1 Dec 20:00, but that cannot be kept: 'trim all areas' on Crane is set for 19:30 and takes until 20:30.");

    [Theory]
    [InlineData(30, 30)] // trimmed on Monday it stands until Wednesday, so its first coat comes on Thursday
    [InlineData(90, 0)] // trimming fills Monday, so the first coat comes on Tuesday at 19:00 and needs most of an hour
    [InlineData(40, 0.2)]
    public void Too_early_it_says_a_start_at_which_it_can_be(double minutes, double hours)
    {
        Workshop Batch(string at) => Workshop.In().Weekly("Mon Tue Thu", "19:00", "20:30").Model(
            "Saint", 1, r => r.Work("trim", minutes).Rest(hours).Brush(Boot).Brush(Pot("gilt", Metallic), "suit").At(at));
        var at = minutes < 90 && hours < 1 ? "2026-11-30 19:10" : "2026-12-01 19:10";

        var said = FirstStart().Match(Batch(at).NoPlan().Message);

        said.Success.Should().BeTrue(Batch(at).NoPlan().Message);
        var moved = $"2026-{(said.Groups[2].Value == "Nov" ? 11 : 12)}-{said.Groups[1].Value.PadLeft(2, '0')} {said.Groups[3].Value}";
        Batch(moved).Outcome().Should().BeOfType<PlanOutcome.Planned>("moved to {0} it is planned", moved);
    }

    [Fact]
    public void What_stood_in_the_way_of_the_last_try_is_told_as_a_hint()
    {
        // two evenings of an hour would hold both, but it dries beyond the second: no work is missing, only time
        var finding = Workshop.In().On("2026-12-01", "19:00", "20:00").On("2026-12-02", "19:00", "20:00")
            .Model("Crane", 1, r => r.Work("trim", minutes: 20).Rest(hours: 40).Work("sand", minutes: 15)).NoPlan();

        finding.Message.Should().Be("No plan was found in the sittings there are: 15 min of work find no time, first 'sand all areas'. That is 1 more sitting. The last one ends Wed 2 Dec 20:00.");
    }

    [GeneratedRegex(@"The first start found is \w+ (\d+) (\w+) ([\d:]+)\.$")]
    private static partial Regex FirstStart();
}
