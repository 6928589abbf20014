using Pipeline.Scheduling;
using static Pipeline.Tests.Scheduling.Given;

namespace Pipeline.Tests.Scheduling;

/// <summary>A piece takes one place in the rack, however many of its areas are wet at a time.</summary>
public class RackTests
{
    private const int Hull = 0;
    private const int Deck = 1;

    [Fact]
    public void Ten_pieces_with_two_wet_areas_each_and_two_of_another_model_go_into_a_rack_of_twelve()
    {
        // three minutes each, wet for two hours
        Problem Bench(int? lot) => Rack(12, Wet("hull", 10, 3, 120, lot), Wet("deck", 10, 3, 120, lot), Wet("crate", 2, 3, 120, null), Wet("gull", 1, 3, 120, null));

        var plan = Plan(Bench(lot: 7));
        plan.Schedule.Runs.Where(run => run.Start < 100).Sum(run => run.Units).Should().Be(22, "both areas of the ten and two more");
        Plan(Bench(lot: null)).Schedule.Runs.Where(run => run.Start < 100).Sum(run => run.Units).Should().Be(12, "as if each area were a piece");
    }

    [Fact]
    public void A_rack_with_room_for_all_pieces_costs_nothing()
    {
        var net = new Net(Rack(12, Wet("hull", 10, 3, 120, 7), Wet("deck", 10, 3, 120, 7), Wet("crate", 2, 3, 120, null)));
        net.HasStays.Should().BeFalse();
        new Net(Rack(11, Wet("hull", 10, 3, 120, 7), Wet("deck", 10, 3, 120, 7), Wet("crate", 2, 3, 120, null))).HasStays.Should().BeTrue();
    }

    [Fact]
    public void A_rack_of_one_holds_both_areas_of_a_piece_the_same_evening_and_another_piece_not()
    {
        var plan = Plan(Rack(1, Wet("hull", 1, 10, 120, 1), Wet("deck", 1, 10, 120, 1), Wet("crate", 1, 10, 120, 2)));
        plan.Schedule.Runs.Where(run => run.Start < 100).Select(run => run.Activity).Should().BeEquivalentTo([Hull, Deck]);
        plan.Score.Finish.Should().Be(210);
    }

    [Fact]
    public void Two_models_share_a_rack_piece_by_piece()
    {
        // three of one model with two areas each leave room for one of the other
        var plan = Plan(Rack(4, Wet("hull", 3, 5, 150, 1), Wet("deck", 3, 5, 150, 1), Wet("crate", 3, 5, 150, 2), Wet("lid", 3, 5, 150, 2)));
        foreach (var evening in new[] { 0, 200 })
        {
            var pieces = plan.Schedule.Runs.Where(run => run.Start >= evening && run.Start < evening + 100)
                .SelectMany(run => Enumerable.Range(run.FirstUnit, run.Units).Select(k => (run.Activity / 2, k))).Distinct();
            pieces.Count().Should().BeLessThanOrEqualTo(4);
        }

        plan.Score.Finish.Should().BeLessThan(300, "a second evening is enough");
    }

    [Fact]
    public void The_rack_is_full_until_the_last_area_of_a_piece_is_dry()
    {
        // the hull is dry at 50, the deck at 80
        var plan = Plan(Rack(1, Wet("hull", 1, 10, 40, 1), Wet("deck", 1, 10, 60, 1), Wet("crate", 1, 10, 5, 2) with { NotBefore = 5 }) with { Dues = [new Due(Hull, 10), new Due(Deck, 20)] });
        string.Join(" ", plan.Schedule.Runs.Select(run => $"{run.Activity}@{run.Start}")).Should().Be("0@0 1@10 2@80");
        plan.Reasons[2].Should().Be(new Reason.PlaceFull(0, Run: 1));
    }

    [Fact]
    public void It_is_not_the_rack_that_holds_back_what_starts_by_chance_as_a_place_falls_free()
    {
        var problem = Rack(2, Wet("hull", 1, 10, 30, 1), Wet("crate", 1, 10, 30, 2), Wet("gull", 1, 10, 200, 3));
        var schedule = new Schedule([new Run(0, 0, 1, 0, -1, 0, 0, 0, 10, 0), new Run(1, 0, 1, 0, -1, 40, 0, 0, 10, 0), new Run(2, 0, 1, 0, -1, 80, 0, 0, 10, 0)], []);
        Auditor.Audit(problem, schedule).Should().BeEmpty();
        // as the hull is dry at 40, and the crate at 80
        new Explanation(new Net(problem), schedule).Reasons.Skip(1).Should().OnlyContain(reason => reason is Reason.Nothing);
    }

    [Theory]
    [InlineData(2, 1, 0, false)] // the second area while the first is wet: one piece
    [InlineData(2, 2, 0, false)] // exactly full
    [InlineData(1, 1, 0, false)]
    [InlineData(1, 2, 0, true)] // a second piece has no room
    [InlineData(2, 2, 1, true)] // nor has one that is a lot of its own
    [InlineData(3, 2, 1, false)]
    public void The_auditor_counts_each_piece_once(int room, int pieces, int others, bool isOverfull)
    {
        Activity[] activities = [Wet("hull", 2, 10, 300, 1), Wet("deck", 2, 10, 300, 1), Wet("crate", 1, 10, 300, null)];
        var problem = Rack(room, activities);
        // what is not to be there at once comes when all else is dry
        long Start(bool isNow, long now, long later) => isNow ? now : later;
        var schedule = new Schedule(
            [
                new Run(0, 0, 1, 0, -1, 0, 0, 0, 10, 0),
                new Run(1, 0, 1, 0, -1, 10, 0, 0, 10, 0),
                new Run(0, 1, 1, 0, -1, Start(pieces > 1, 20, 600), 0, 0, 10, 0),
                new Run(1, 1, 1, 0, -1, Start(pieces > 1, 30, 610), 0, 0, 10, 0),
                new Run(2, 0, 1, 0, -1, Start(others > 0, 40, 1200), 0, 0, 10, 0),
            ],
            []);
        Auditor.Audit(problem, schedule).Select(fault => fault.Kind).Distinct().Should().Equal(isOverfull ? [FaultKind.Place] : []);
    }

    [Fact]
    public void A_piece_that_past_work_left_in_an_overfull_rack_may_get_its_second_area()
    {
        // two stand in a rack of one, which is a fact; the third piece waits until both are dry
        var done = Wet("hull", 3, 10, 100, 1) with { Past = [new Run(0, 0, 2, 0, -1, -20, 0, 0, 20, 0)] };
        var plan = Plan(Rack(1, done, Wet("deck", 3, 10, 20, 1)), Effort.Usual);
        plan.Schedule.Runs.Single(run => run.Activity == Deck && run.FirstUnit == 0).Start.Should().Be(0);
        plan.Schedule.Runs.Single(run => run.Activity == Hull && run.FirstUnit == 2).Start.Should().BeGreaterThanOrEqualTo(100);
    }

    [Fact]
    public void A_lot_that_takes_the_rack_by_different_amounts_is_malformed()
    {
        var problem = Rack(3, Wet("hull", 2, 10, 30, 1), Wet("deck", 2, 10, 30, 1) with { Places = [new PlaceUse(0, 2, 30)] });
        ((Action)(() => Solver.Solve(problem, Effort.Quick))).Should().Throw<ArgumentException>().WithMessage("Lot 1 uses place 0 by different amounts.");
    }

    private static Activity Wet(string name, int units, long perUnit, long dry, int? lot) =>
        Task(name, perUnit, units) with { Lot = lot, Places = [new PlaceUse(0, 1, dry)] };

    private static Problem Rack(int room, params Activity[] activities) =>
        Problem(Worker([.. Enumerable.Range(0, 8).Select(evening => (200L * evening, (200L * evening) + 100))]), activities) with { Places = [new Place("rack", room)] };
}
