using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>Paint on a piece that is still wet from the bath.</summary>
public sealed class DampPiece : SettlingRule
{
    /// <inheritdoc/>
    public override string Summary => "A washed, wet-sanded or stripped piece is dry before it is painted or cured.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.Kind == StepKind.Coat || step.First<Deed.Prepare>() is { What: Preparation.PostCured };

    /// <inheritdoc/>
    protected override Settling? Judge(Moment moment, Surface surface, PreparationDone done)
    {
        if (done.What is not (Preparation.Washed or Preparation.Sanded or Preparation.Stripped) || surface.IsMasked || surface.IsHidden || IsCovered(surface, done))
            return null;
        // what a solvent bath leaves in a print is another rule's
        if (moment.Step.Kind == StepKind.Coat && surface.Material.NeedsPostCure && done.What == Preparation.Washed && done.Carrier is not (Carrier.Water or Carrier.None))
            return null;
        return new("dry", "The piece is still damp, and what is in its folds ends up under the paint.", "Leave it to dry, or help with gentle air.");
    }
}
