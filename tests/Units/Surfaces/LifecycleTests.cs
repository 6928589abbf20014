using Pipeline.Abstractions;
using Pipeline.Surfaces.Lifecycle;
using static Pipeline.Abstractions.LifecycleState;

namespace Pipeline.Tests.Units.Surfaces;

/// <summary>Where a model stands after each step.</summary>
public sealed class LifecycleTests
{
    [Fact]
    public void A_usual_route_goes_from_bare_to_finished() => Standings(
        HandMade.Of("fur", "eyes").Clean("fur", "eyes").Spray("grey", "fur", "eyes").Mask("lids", "eyes").Spray("ginger", "fur").Unmask("lids")
            .Varnish("clear", "fur").Brush("green", "eyes")).Should().Equal(Prepared, Coated, Masked, Masked, Coated, Sealed, Finished);

    [Fact]
    public void A_mask_left_on_keeps_it_from_being_finished() =>
        Standings(HandMade.Of("fur", "eyes").Mask("lids", "eyes").Spray("ginger", "fur")).Should().Equal(Masked, Masked);

    [Fact]
    public void A_stripped_piece_is_prepared_again() =>
        Standings(HandMade.Of("fur").Brush("ginger", "fur").Strip("fur").Brush("grey", "fur")).Should().Equal(Coated, Prepared, Finished);

    [Fact]
    public void A_piece_bought_painted_may_be_stripped_first() =>
        HandMade.Of("fur").Strip("fur").Brush("grey", "fur").Walk().Findings.Should().BeEmpty();

    [Fact]
    public void A_coat_with_nothing_in_reach_is_refused_and_the_walk_says_so()
    {
        var walked = HandMade.Of("fur", "eyes").Mask("lids", "eyes").Brush("green", "eyes").Unmask("lids").Walk();

        walked.Routes[0].Moments[1].Passage.Should().Be(new Passage(Masked, Masked, "everything it names lies under a mask"));
        walked.Findings.Should().ContainSingle().Which.Rule.Should().Be("step-out-of-turn");
        walked.Findings[0].Place.Line.Should().Be(101);
    }

    [Fact]
    public void Taking_off_a_mask_that_is_not_on_is_refused() =>
        HandMade.Of("fur").Brush("grey", "fur").Unmask("lids").Walk().Routes[0].Moments[1].Passage.Refusal.Should().Be("the mask 'lids' is not on");

    [Fact]
    public void Cleaning_back_where_nothing_is_is_refused() =>
        HandMade.Of("fur").CleanBack("fur").Walk().Findings.Should().ContainSingle().Which.Message.Should().Contain("nothing on it to clean back");

    [Fact]
    public void The_diagram_in_docs_is_that_of_the_machine() => Golden.Of("docs/lifecycle.md").ShouldBe(LifecycleDiagram.Page());

    private static IEnumerable<LifecycleState> Standings(HandMade route) => route.Walk().Routes[0].Moments.Select(moment => moment.Passage.After);
}
