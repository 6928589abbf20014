using Pipeline.Abstractions;

namespace Pipeline.Tests.Units.Surfaces;

/// <summary>Asking rules, silencing them, putting together what they say.</summary>
public sealed class RuleRunnerTests
{
    [Fact]
    public void A_rule_that_throws_is_one_finding_that_names_it_and_the_others_go_on()
    {
        var walked = HandMade.Of("fur").Brush("grey", "fur").Brush("ginger", "fur").Walk(new Throws(), new NoGinger());

        walked.Findings.Should().HaveCount(2);
        walked.Findings[0].Message.Should().Be("The rule 'throws' of the plugin 'Cats' failed here and was left out of this check: the cat sat on it (FormatException)");
        walked.Findings[1].Rule.Should().Be("no-ginger");
    }

    [Fact]
    public void A_rule_that_speaks_of_steps_that_are_not_there_has_failed() =>
        HandMade.Of("fur").Brush("grey", "fur").Walk(new SpeaksOfNowhere()).Findings.Should().ContainSingle()
            .Which.Message.Should().Contain("speaks-of-nowhere").And.Contain("step 7");

    [Fact]
    public void Verdicts_that_differ_only_in_areas_are_one()
    {
        var walked = HandMade.Of("fur", "nose", "tail").Brush("ginger", "fur", "nose", "tail").Walk(new NoGinger());

        var finding = walked.Findings.Should().ContainSingle().Subject;
        finding.Message.Should().Be("There is ginger on fur, nose and tail.");
        finding.Areas.Should().Equal("fur", "nose", "tail");
    }

    [Fact]
    public void A_silence_keeps_the_finding_with_its_reason() =>
        HandMade.Of("fur").Brush("ginger", "fur").Allow("no-ginger", "it is a ginger cat").Walk(new NoGinger())
            .Findings.Should().ContainSingle().Which.Silenced.Should().Be("it is a ginger cat");

    [Fact]
    public void A_silenced_wait_is_dropped()
    {
        HandMade.Of("fur").Brush("grey", "fur").Brush("pink", "fur").Walk(new PinkWaits()).Routes[0].Waits.Should().HaveCount(1);
        HandMade.Of("fur").Brush("grey", "fur").Brush("pink", "fur").Allow("pink-waits", "tested").Walk(new PinkWaits())
            .Should().Match<Pipeline.Surfaces.Walked>(walked => walked.Routes[0].Waits.IsEmpty && walked.Findings.IsEmpty);
    }

    [Fact]
    public void A_silence_that_silences_nothing_is_a_note()
    {
        var finding = HandMade.Of("fur").Brush("grey", "fur").Allow("no-ginger", "?").Walk(new NoGinger()).Findings.Should().ContainSingle().Subject;

        finding.Should().Match<Finding>(note => note.Rule == "silence-without-effect" && note.Level == Level.Note && note.Place.Line == 100);
    }

    [Fact]
    public void A_silence_of_a_rule_nobody_knows_says_so() =>
        HandMade.Of("fur").Brush("grey", "fur").Allow("no-gingre", "?").Walk(new NoGinger()).Findings.Should().ContainSingle()
            .Which.Message.Should().Contain("no rule of that name");

    [Fact]
    public void A_step_of_a_scheme_followed_twice_is_one_finding_that_says_how_many()
    {
        var cat = HandMade.Of("fur").Brush("ginger", "fur").FromScheme(7).Route();
        var kitten = HandMade.Of("coat").Brush("ginger", "coat").FromScheme(7).Route();

        var finding = HandMade.WalkRoutes([cat, kitten with { Model = kitten.Model with { Name = "Kitten" } }], new NoGinger())
            .Findings.Should().ContainSingle().Subject;

        finding.Message.Should().Be("There is ginger on fur. (2 times: Harbour cat and Kitten)");
        finding.Model.Should().BeNull();
        finding.Areas.Should().Equal("fur", "coat");
    }

    private abstract class CatRule : Rule
    {
        public override string Summary => "Invented for this test.";

        public override string Source => "invented";
    }

    private sealed class NoGinger : CatRule
    {
        public override string Name => "no-ginger";

        public override IEnumerable<Verdict> Judge(Moment moment) =>
            from area in moment.Step.Areas
            where moment.After[area].Top?.Name == "ginger"
            select new Verdict.Says
            {
                Step = moment.Step.Index,
                Level = Level.Warning,
                Areas = [area],
                Message = "There is ginger on {areas}.",
                Remedy = "Take another colour.",
            };
    }

    private sealed class PinkWaits : CatRule
    {
        public override string Name => "pink-waits";

        public override IEnumerable<Verdict> Judge(Moment moment)
        {
            if (moment.Step.Index > 0 && moment.After["fur"].Top?.Name == "pink")
            {
                yield return new Verdict.Needs
                {
                    Step = moment.Step.Index,
                    Since = moment.Step.Index - 1,
                    Span = new Span.AtLeast(DryingRange.Hours(1, 2)),
                    For = "recoatable",
                    Message = "It lifts.",
                    Remedy = "Wait.",
                };
            }
        }
    }

    private sealed class SpeaksOfNowhere : CatRule
    {
        public override string Name => "speaks-of-nowhere";

        public override IEnumerable<Verdict> JudgeRoute(WalkedSteps route) =>
            [new Verdict.Says { Step = 7, Level = Level.Error, Message = "?", Remedy = "?" }];
    }

    private sealed class Throws : CatRule
    {
        public override string Name => "throws";

        public override IEnumerable<Verdict> Judge(Moment moment) => throw new FormatException("the cat sat on it\nand slept");
    }
}
