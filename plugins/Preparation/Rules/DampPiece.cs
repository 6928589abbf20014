using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>Paint on a piece that is still wet from a bath or from wet work.</summary>
public sealed class DampPiece : SettlingRule
{
    /// <inheritdoc/>
    public override string Summary => "A piece that was washed, stripped or worked wet is dry before it is painted or cured.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.Kind == StepKind.Coat || step.First<Deed.Prepare>() is { What: Preparation.PostCured };

    /// <inheritdoc/>
    protected override Settling? Judge(Moment moment, Surface surface, PreparationDone done)
    {
        if (!GetsWet(done.What) || surface.IsMasked || surface.IsHidden || IsCovered(surface, done))
            return null;
        // what a solvent bath leaves in a print is another rule's
        if (moment.Step.Kind == StepKind.Coat && surface.Material.NeedsPostCure && done.What == Preparation.Washed && done.Carrier is not (Carrier.Water or Carrier.None))
            return null;
        return new("dry", "The piece is still damp, and what is in its folds ends up under the paint.", "Leave it to dry, or help with gentle air.");
    }

    // of these only what was done wet has anything to dry
    private static bool GetsWet(Preparation what) =>
        what is Preparation.Washed or Preparation.Stripped or Preparation.Sanded or Preparation.Trimmed or Preparation.Drilled;
}
