using CsCheck;
using Pipeline.Abstractions;

namespace Pipeline.Tests.Units.Surfaces;

/// <summary>Which steps of a route keep their order.</summary>
public sealed class OrderTests
{
    [Fact]
    public void Steps_on_the_same_area_keep_their_order() =>
        Order(HandMade.Of("fur", "nose").Brush("grey", "fur").Brush("ginger", "fur")).Should().Equal((0, 1));

    [Fact]
    public void Brushed_steps_on_different_areas_may_be_swapped() =>
        Order(HandMade.Of("fur", "nose").Brush("ginger", "fur").Brush("pink", "nose")).Should().BeEmpty();

    [Fact]
    public void Overspray_keeps_the_order_with_what_it_reaches() =>
        Order(HandMade.Of("fur", "nose").Brush("pink", "nose").Spray("ginger", "fur")).Should().Equal((0, 1));

    [Fact]
    public void Spray_on_another_part_may_be_swapped() =>
        Order(HandMade.Of("body/fur", "stand/grass").Brush("green", "grass").Spray("ginger", "fur")).Should().BeEmpty();

    [Fact]
    public void A_spray_stays_between_mask_and_unmask_of_its_part() =>
        Order(HandMade.Of("fur", "eyes").Mask("lids", "eyes").Spray("ginger", "fur").Unmask("lids")).Should().Equal((0, 1), (1, 2));

    [Fact]
    public void Masks_on_different_areas_may_be_put_on_in_either_order() =>
        Order(HandMade.Of("fur", "eyes", "nose").Mask("lids", "eyes").Mask("snout", "nose").Spray("ginger", "fur")).Should().Equal((0, 2), (1, 2));

    [Fact]
    public void A_join_waits_for_both_parts() =>
        Order(HandMade.Of("body/fur", "stand/grass").Brush("ginger", "fur").Brush("green", "grass").Join(["body", "stand"], []))
            .Should().Equal((0, 2), (1, 2));

    [Fact]
    public void Overspray_reaches_the_parts_that_have_been_joined() =>
        Order(Joined().Spray("ginger", "fur").Brush("green", "grass")).Should().Equal((0, 1), (1, 2));

    [Fact]
    public void Before_a_join_spray_stays_on_its_part() =>
        Order(HandMade.Of("body/fur", "stand/grass").Spray("ginger", "fur").Brush("green", "grass").Join(["body", "stand"], []))
            .Should().Equal((0, 2), (1, 2));

    [Fact]
    public void Overspray_reaches_what_was_joined_to_a_joined_part() =>
        Order(HandMade.Of("tail/tip", "body/fur", "stand/grass").Join(["tail", "body"], []).Join(["stand", "body"], []).Spray("ginger", "tip").Brush("green", "grass"))
            .Should().Equal((0, 1), (1, 2), (2, 3));

    [Fact]
    public void A_spray_stays_between_mask_and_unmask_of_a_joined_part() =>
        Order(Joined().Mask("sheet", "grass").Spray("ginger", "fur").Unmask("sheet")).Should().Equal((0, 1), (1, 2), (2, 3));

    [Fact]
    public void Brushed_steps_on_joined_parts_may_be_swapped() =>
        Order(Joined().Brush("ginger", "fur").Brush("green", "grass")).Should().Equal((0, 1), (0, 2));

    [Fact]
    public void The_file_can_order_what_touches_nothing_in_common() =>
        Order(HandMade.Of("fur", "nose").Brush("ginger", "fur").Brush("pink", "nose").After(0)).Should().Equal((0, 1));

    [Fact]
    public void What_follows_from_other_pairs_is_left_out() =>
        Order(HandMade.Of("fur").Brush("grey", "fur").Brush("ginger", "fur").Brush("white", "fur").After(0)).Should().Equal((0, 1), (1, 2));

    [Fact]
    public void Every_pair_says_why() =>
        HandMade.Of("fur", "nose").Brush("pink", "nose").Spray("ginger", "fur").Walk().Routes[0].Order.Should().ContainSingle()
            .Which.Why.Should().Be("overspray reaches nose");

    [Fact]
    public void Twenty_thousand_steps_are_put_in_order()
    {
        var route = HandMade.Of(Enumerable.Range(0, 40).Select(i => "area " + i).ToArray());
        for (var i = 0; i < 20_000; i++)
            route.Brush("grey", "area " + (i % 40));

        route.Walk().Routes[0].Order.Should().HaveCount(20_000 - 40);
    }

    [Fact]
    public void Swapping_neighbours_that_keep_no_order_changes_no_surface() =>
        Gen.Select(Gen.Int[0, 6], Gen.Int[0, 5], Gen.Int[0, 5]).List[1, 14].Sample(drawn =>
        {
            var route = Drawn(drawn).Route();
            var straight = HandMade.WalkRoutes([route]).Routes[0];
            var ordered = straight.Order.Select(pair => (pair.Earlier, pair.Later)).ToHashSet();
            for (var i = 0; i + 1 < route.Steps.Count; i++)
            {
                if (ordered.Contains((i, i + 1)))
                    continue;
                var swapped = route with
                {
                    Steps = route.Steps.Select((step, at) =>
                        at == i ? route.Steps[i + 1] with { Index = i } : at == i + 1 ? route.Steps[i] with { Index = i + 1 } : step).ToSequence(),
                };
                var other = HandMade.WalkRoutes([swapped]).Routes[0];
                if (!Same(straight.Moments[^1].After, other.Moments[^1].After, at => at == i ? i + 1 : at == i + 1 ? i : at))
                    return false;
            }

            return true;
        });

    private static HandMade Joined() => HandMade.Of("body/fur", "stand/grass").Join(["body", "stand"], []);

    private static HandMade Drawn(List<(int Verb, int One, int Other)> drawn)
    {
        string[] areas = ["fur", "eyes", "nose", "grass", "rock", "tip"];
        var route = HandMade.Of("body/fur", "body/eyes", "body/nose", "stand/grass", "stand/rock", "tail/tip");
        foreach (var (verb, one, other) in drawn)
        {
            string[] named = one == other ? [areas[one]] : [areas[one], areas[other]];
            _ = verb switch
            {
                0 => route.Clean(named),
                1 => route.Brush("grey", named),
                2 or 3 => route.Spray("ginger", named),
                4 => route.Mask("mask " + other, areas[one]),
                5 => route.Unmask("mask " + other),
                _ => one switch
                {
                    0 => route.Join(["body", "stand"], [areas[other]]),
                    1 => route.Join(["tail", "body"], []),
                    2 => route.Join(["stand", "tail"], []),
                    _ => route.Strip(areas[one]),
                },
            };
        }

        return route;
    }

    // equal but for the indexes of the two steps
    private static bool Same(SurfaceMap left, SurfaceMap right, Func<int, int> index) =>
        left.Areas.All(area => Renumbered(left[area], at => at).Equals(Renumbered(right[area], index)));

    private static string Renumbered(Surface surface, Func<int, int> index) => string.Join(
        ';',
        string.Join(',', surface.Layers.Select(layer => $"{index(layer.Step)} {layer.Name}")),
        string.Join(',', surface.Preparations.Select(done => $"{index(done.Step)} {done.What}")),
        string.Join(',', surface.Masks.Select(mask => $"{index(mask.Step)} {mask.Name} {string.Join('/', mask.Layers.Select(l => index(l.Step)))}")),
        string.Join(',', surface.Overspray.Select(index)),
        surface.IsHidden);

    private static IEnumerable<(int Earlier, int Later)> Order(HandMade route) =>
        route.Walk().Routes[0].Order.Select(pair => (pair.Earlier, pair.Later));
}
