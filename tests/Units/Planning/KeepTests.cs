using Pipeline.Abstractions;
using Pipeline.Planning;
using static Pipeline.Tests.Units.Planning.RouteSteps;

namespace Pipeline.Tests.Units.Planning;

/// <summary>A plan that stays close to an earlier one. From Monday 30 November 18:00, with evenings from 19:00 to 22:00.</summary>
public class KeepTests
{
    private static readonly Paint Undercoat = Pot("slate undercoat", Lacquer);
    private static readonly Paint Boot = Pot("wet boot", Waterborne);

    private static Workshop Crew(double trim = 10, bool withTokens = true, int lanterns = 0)
    {
        var crew = Workshop.Evenings().Slack(15).Tool("airbrush", 1)
            .Model("Diver", 4, r => r.Clean().Work("trim", trim).Spray(Undercoat, role: LayerRole.Undercoat).Mask("suit", "suit").Spray(Boot, "boots").Unmask("suit").Photograph())
            .Model("Crane", 2, r => r.Clean().Work("trim", 25).Spray(Undercoat, role: LayerRole.Undercoat).Brush(Boot).Photograph());
        if (withTokens)
            crew.Model("Token", 6, r => r.Clean().Spray(Undercoat, role: LayerRole.Undercoat).Brush(Boot, minutes: 8).Photograph());
        return lanterns == 0 ? crew : crew.Model("Lantern", lanterns, r => r.Work("trim", 5));
    }

    private static Plan Replanned(Workshop workshop, Plan earlier) =>
        ((PlanOutcome.Planned)Planner.Plan(workshop.Walked(), Workshop.Trade([]), new PlanRequest(workshop.At("2026-11-30 18:00"), SearchEffort.Quick, Keep: WrittenPlan.Of(earlier)))).Plan;

    [Fact]
    public void Where_nothing_changed_nothing_moves()
    {
        var before = Crew().Plan();
        var after = Replanned(Crew(), before);

        after.Kept!.IsSame.Should().BeTrue();
        Tasks(after).Should().Equal(Tasks(before));

        // but for the reasons: what could move forward into the room left free stays where it is
        static IEnumerable<PlannedTask> Tasks(Plan plan) => plan.Days.SelectMany(day => day.Sittings).SelectMany(sitting => sitting.Tasks).Select(task => task with { WhyNotEarlier = "" });
    }

    [Fact]
    public void Work_that_takes_a_little_longer_goes_into_the_room_left_free_and_moves_nothing_to_another_evening()
    {
        var kept = Replanned(Crew(trim: 12), Crew().Plan()).Kept!;

        kept.Moves.Where(move => move.IsToAnotherSitting).Should().BeEmpty();
        kept.Unmoved.Should().BeGreaterThan(kept.Moves.Count);
        kept.AttendedMinutes.Difference.Should().Be(8);
    }

    [Fact]
    public void Less_is_moved_than_by_planning_anew()
    {
        var before = Crew().Plan();
        var kept = Replanned(Crew(trim: 30), before).Kept!;
        var anew = PlanComparison.Of(WrittenPlan.Of(before), WrittenPlan.Of(Crew(trim: 30).Plan()));

        kept.Moves.Count(move => move.IsToAnotherSitting).Should().BeLessThanOrEqualTo(anew.Moves.Count(move => move.IsToAnotherSitting));
        kept.Moves.Count.Should().BeLessThan(anew.Moves.Count);
    }

    [Fact]
    public void What_is_left_out_leaves_the_rest_where_it_was()
    {
        var before = Crew().Plan();
        var kept = Replanned(Crew(withTokens: false), before).Kept!;

        kept.Moves.Where(move => move.IsToAnotherSitting).Should().BeEmpty();
        kept.Gone.Should().OnlyContain(task => task.Model == "Token").And.HaveCount(4);
        kept.Finishes.Should().ContainSingle(finish => finish.After == null).Which.Model.Should().Be("Token");
    }

    [Fact]
    public void What_is_new_finds_its_place_between()
    {
        var kept = Replanned(Crew(lanterns: 2), Crew().Plan()).Kept!;

        kept.Moves.Where(move => move.IsToAnotherSitting).Should().BeEmpty();
        kept.Added.Should().OnlyContain(task => task.Model == "Lantern").And.NotBeEmpty();
    }

    [Theory]
    [InlineData(4, 5)]
    [InlineData(4, 6)]
    [InlineData(2, 3)]
    public void Pieces_more_of_a_model_go_along_with_the_others(int before, int after)
    {
        var first = Divers(before).Plan();
        var kept = Replanned(Divers(after), first).Kept!;
        var anew = PlanComparison.Of(WrittenPlan.Of(first), WrittenPlan.Of(Divers(after).Plan()));

        kept.Moves.Where(move => move.IsToAnotherSitting).Should().BeEmpty();
        kept.Added.Count.Should().BeLessThan(4, "not each step is done again for what is new");
        // one more set-up than planned anew would be worth keeping the rest in its place, not one at every step
        kept.AttendedMinutes.Difference.Should().BeLessThanOrEqualTo(anew.AttendedMinutes.Difference + 8);
    }

    [Fact]
    public void Where_there_is_no_room_for_a_piece_more_it_comes_by_itself_and_the_rest_stays()
    {
        Workshop Full(int cranes) => Workshop.In().On("2026-11-30", "19:00", "20:00").On("2026-12-01", "19:00", "20:00")
            .Model("Crane", cranes, r => r.Work("trim", 20)).Model("Diver", 1, r => r.Work("trim", 15));
        var kept = Replanned(Full(3), Full(2).Plan()).Kept!;

        kept.Added.Should().ContainSingle().Which.Model.Should().Be("Crane");
        kept.Moves.Should().BeEmpty();
    }

    [Fact]
    public void A_piece_less_leaves_the_others_where_they_were()
    {
        var kept = Replanned(Divers(3), Divers(5).Plan()).Kept!;

        kept.Moves.Should().OnlyContain(move => move.IsSlide || move.Before.Start == move.After.Start);
        kept.Added.Should().BeEmpty();
        kept.AttendedMinutes.Difference.Should().BeNegative();
    }

    private static Workshop Divers(int count) => Workshop.Evenings().Slack(15).Tool("airbrush", 1)
        .Model("Diver", count, r => r.Work("trim", 6).Spray(Undercoat, role: LayerRole.Undercoat).Brush(Boot, minutes: 5).Photograph())
        .Model("Crane", 2, r => r.Work("trim", 15).Spray(Undercoat, role: LayerRole.Undercoat).Photograph());

    [Fact]
    public void A_due_time_comes_before_staying_close()
    {
        Workshop Two(string? due) => Workshop.Evenings().Model("Diver", 3, r => r.Work("trim", 60)).Model("Crane", 3, r => r.Work("trim", 60), due);
        var before = Two("2026-12-02 12:00").Plan();
        var crane = Replanned(Two("2026-11-30 22:30"), before);

        crane.Finishes[1].Ready.Day.Should().Be(30);
    }
}
