using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>Work on a joint whose glue has not set.</summary>
public sealed class JointNotSet : SettlingRule
{
    private const string Remedy = "Leave the joint alone until it has set.";

    /// <inheritdoc/>
    public override string Summary => "A glued joint has set before anybody works on it.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) =>
        step.Kind == StepKind.Coat || step.First<Deed.Prepare>() is { What: not Preparation.Glued } || step.First<Deed.Handle>() is not null;

    /// <inheritdoc/>
    protected override Settling? Judge(Moment moment, Surface surface, PreparationDone done)
    {
        var prepares = moment.Step.First<Deed.Prepare>();
        // sanding asks for more than the coat that has covered the joint did
        if (done.What is not (Preparation.Glued or Preparation.Joined) || (prepares is null && IsCovered(surface, done)))
            return null;
        return prepares is { What: Preparation.Sanded } && moment.At(done.Step).First<Deed.Prepare>()?.Sandable is { } sandable
            ? new("seam hard enough to sand", "A seam sanded too soon sinks and shows as a ghost line.", Remedy, sandable)
            : new("glue set", "The joint shifts or opens if it is worked on before the glue has set.", Remedy);
    }
}
