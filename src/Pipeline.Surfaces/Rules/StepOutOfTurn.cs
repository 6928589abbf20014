using Pipeline.Abstractions;

namespace Pipeline.Surfaces.Rules;

/// <summary>A step that the lifecycle refuses and about which no other rule has anything to say.</summary>
public sealed class StepOutOfTurn : Rule
{
    /// <inheritdoc/>
    public override string Name => "step-out-of-turn";

    /// <inheritdoc/>
    public override string Summary => "A step does something the piece can take at that moment.";

    /// <inheritdoc/>
    public override string Source => "common practice";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment) =>
        moment.Passage.Refusal is not { } refusal
            ? []
            :
            [
                new Verdict.Says
                {
                    Step = moment.Step.Index,
                    Level = Level.Error,
                    Areas = moment.Step.Areas,
                    Message = $"This step cannot be done here: {refusal}.",
                    Remedy = "Move it to where the piece is ready for it, or take it out.",
                },
            ];
}
