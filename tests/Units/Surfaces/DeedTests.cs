using Pipeline.Abstractions;

namespace Pipeline.Tests.Units.Surfaces;

/// <summary>What steps make of surfaces.</summary>
public sealed class DeedTests
{
    [Fact]
    public void A_coat_lays_its_layer_on_the_areas_it_names()
    {
        var after = After(HandMade.Of("fur", "eyes").Brush("ginger", "fur"));

        after["fur"].Top!.Name.Should().Be("ginger");
        after["fur"].Top!.Step.Should().Be(0);
        after["eyes"].Top.Should().BeNull();
    }

    [Fact]
    public void A_coat_to_a_masked_area_stays_on_the_mask()
    {
        var route = HandMade.Of("fur", "eyes").Mask("lids", "eyes").Spray("ginger", "fur", "eyes");

        After(route)["eyes"].Top.Should().BeNull();
        After(route)["eyes"].Masks[0].Layers.Should().ContainSingle(layer => layer.Name == "ginger");
        After(route.Unmask("lids"))["eyes"].Should().Match<Surface>(eyes => eyes.Top == null && !eyes.IsMasked);
    }

    [Fact]
    public void Of_two_masks_the_upper_one_takes_the_coat()
    {
        var after = After(HandMade.Of("fur").Mask("lower", "fur").Mask("upper", "fur").Spray("ginger", "fur"));

        after["fur"].Masks[0].Layers.Should().BeEmpty();
        after["fur"].Masks[1].Layers.Should().HaveCount(1);
    }

    [Fact]
    public void Overspray_reaches_what_is_unmasked_of_the_same_part()
    {
        var walked = HandMade.Of("body/fur", "body/eyes", "body/nose", "stand/grass").Mask("lids", "eyes").Spray("ginger", "fur").Walk();

        walked.Routes[0].Moments[1].Overspray.Should().Equal("nose");
        walked.Routes[0].Moments[1].After["nose"].Overspray.Should().Equal(1);
        walked.Routes[0].Moments[1].After["nose"].Top.Should().BeNull();
    }

    [Fact]
    public void A_brush_reaches_only_what_it_is_led_over() =>
        HandMade.Of("fur", "nose").Brush("ginger", "fur").Walk().Routes[0].Moments[0].Overspray.Should().BeEmpty();

    [Fact]
    public void A_hidden_area_takes_no_coat_and_no_overspray()
    {
        var walked = HandMade.Of("body/fur", "body/joint", "stand/grass").Join(["body", "stand"], ["joint"]).Spray("ginger", "fur").Brush("pink", "joint").Walk();

        walked.Routes[0].Moments[1].Overspray.Should().Equal("grass");
        walked.Routes[0].Moments[2].After["joint"].Top.Should().BeNull();
        walked.Routes[0].Moments[2].After["grass"].Has(Preparation.Joined).Should().BeTrue();
    }

    [Fact]
    public void Parts_are_one_piece_from_their_join_on()
    {
        var route = HandMade.Of("tail/tip", "body/fur", "stand/grass").Join(["stand", "body"], []).Brush("green", "grass").Join(["body", "tail"], []).Route();
        var pieces = new Pieces(route.Model, route.Steps);

        bool Beside(string area, string other, int step) => pieces.IsBeside(area, [other], step) && pieces.IsBeside(other, [area], step);

        Beside("fur", "grass", step: 0).Should().BeFalse("the join itself is only being made");
        Beside("fur", "grass", step: 1).Should().BeTrue();
        Beside("tip", "grass", step: 2).Should().BeFalse();
        Beside("tip", "grass", step: 3).Should().BeTrue("the tail hangs on the body, which stands on the stand");
    }

    [Fact]
    public void Stripping_takes_all_layers_and_the_cleanness_but_not_the_work_on_the_piece()
    {
        var after = After(HandMade.Of("fur").Clean("fur")
            .Step("trim", StepKind.Preparation, ["fur"], new Deed.Prepare(Preparation.Trimmed)).Brush("ginger", "fur").Strip("fur"));

        after["fur"].Top.Should().BeNull();
        after["fur"].Has(Preparation.Washed).Should().BeFalse();
        after["fur"].Has(Preparation.Trimmed).Should().BeTrue();
        after["fur"].Has(Preparation.Stripped).Should().BeTrue();
    }

    [Fact]
    public void A_mask_lasts_from_on_to_off()
    {
        var masks = HandMade.Of("fur", "eyes").Mask("lids", "eyes").Spray("ginger", "fur").Unmask("lids").Mask("coat", "fur").Walk().Routes[0].Masks;

        masks.Should().HaveCount(2);
        masks[0].Should().Match<Pipeline.Surfaces.MaskSpan>(lids => lids.Name == "lids" && lids.OnStep == 0 && lids.OffStep == 2);
        masks[1].OffStep.Should().BeNull();
    }

    private static SurfaceMap After(HandMade route) => route.Walk().Routes[0].Moments[^1].After;
}
