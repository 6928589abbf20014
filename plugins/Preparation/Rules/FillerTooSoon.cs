using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>Filler sanded or painted over before it has cured.</summary>
public sealed class FillerTooSoon : SettlingRule
{
    /// <inheritdoc/>
    public override string Summary => "Filler has cured before it is sanded or painted.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) =>
        step.Kind == StepKind.Coat || step.First<Deed.Prepare>() is { What: Preparation.Sanded or Preparation.Trimmed or Preparation.Drilled };

    /// <inheritdoc/>
    protected override Settling? Judge(Moment moment, Surface surface, PreparationDone done)
    {
        if (done.What != Preparation.Filled || IsCovered(surface, done))
            return null;
        return new("filler cured", "Filler worked or painted over too soon shrinks back, and the repair shows.", "Let it cure through; overnight is the usual time.");
    }
}
