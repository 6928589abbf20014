using Pipeline.Abstractions;

namespace Pipeline.Tests.Units.Surfaces;

/// <summary>Rules that look at the batch as a whole.</summary>
public sealed class BatchRuleTests
{
    [Fact]
    public void A_rule_can_speak_about_steps_of_several_routes()
    {
        var walked = HandMade.WalkRoutes([HandMade.Of("fur").Brush("ginger", "fur").Route(), HandMade.Of("fur").Brush("grey", "fur").Route()], new OneColour());

        var finding = walked.Findings.Should().ContainSingle().Subject;
        finding.Rule.Should().Be("one-colour");
        finding.Message.Should().Be("Fur is grey here and ginger there.");
        finding.Related.Should().ContainSingle().Which.Message.Should().Be("ginger here");
    }

    [Fact]
    public void It_is_silenced_at_the_step_it_speaks_of() =>
        HandMade.WalkRoutes(
            [HandMade.Of("fur").Brush("ginger", "fur").Route(), HandMade.Of("fur").Brush("grey", "fur").Allow("one-colour", "two litters").Route()],
            new OneColour()).Findings.Should().ContainSingle().Which.Silenced.Should().Be("two litters");

    [Fact]
    public void A_rule_that_throws_about_the_batch_is_one_finding() =>
        HandMade.Of("fur").Brush("ginger", "fur").Walk(new Trips()).Findings.Should().ContainSingle()
            .Which.Message.Should().Contain("'trips'").And.Contain("left out");

    [Fact]
    public void A_rule_that_speaks_of_a_route_that_is_not_there_has_failed() =>
        HandMade.Of("fur").Brush("ginger", "fur").Walk(new Strays()).Findings.Should().ContainSingle().Which.Message.Should().Contain("route 4");

    private sealed class OneColour : Rule
    {
        public override string Name => "one-colour";

        public override string Summary => "All cats are alike.";

        public override string Source => "common practice";

        public override IEnumerable<BatchVerdict> JudgeBatch(BatchView batch)
        {
            var first = batch.Routes[0].Moments[0];
            for (var i = 1; i < batch.Routes.Count; i++)
            {
                var here = batch.Routes[i].Moments[0];
                yield return new BatchVerdict
                {
                    Level = Level.Warning,
                    Place = here.Step.Place,
                    Step = new StepInBatch(i, 0),
                    Areas = here.Step.Areas,
                    Message = $"{{areas}} is {here.After["fur"].Top!.Name} here and {first.After["fur"].Top!.Name} there.",
                    Remedy = "Paint {areas} alike.",
                    Related = [new Related(first.Step.Place, first.After["fur"].Top!.Name + " here")],
                };
            }
        }
    }

    private sealed class Trips : Rule
    {
        public override string Name => "trips";

        public override string Summary => "Falls over.";

        public override string Source => "common practice";

        public override IEnumerable<BatchVerdict> JudgeBatch(BatchView batch) => throw new FormatException("over the cat");
    }

    private sealed class Strays : Rule
    {
        public override string Name => "strays";

        public override string Summary => "Goes astray.";

        public override string Source => "common practice";

        public override IEnumerable<BatchVerdict> JudgeBatch(BatchView batch) =>
            [new BatchVerdict { Level = Level.Note, Place = batch.Bench, Step = new StepInBatch(4, 0), Message = "Lost.", Remedy = "Go home." }];
    }
}
