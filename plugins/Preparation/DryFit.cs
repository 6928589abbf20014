using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing;

/// <summary>Fits the parts dry.</summary>
public sealed class DryFit : Verb<NoParticulars>
{
    private static readonly Effort PerUnit = new(1.5, 0.04, 40, 0.0115);

    /// <inheritdoc/>
    public override string Name => "dry-fit";

    /// <inheritdoc/>
    public override string Summary => "Fits the parts without glue to find gaps and to choose what is painted apart.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Preparation;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, NoParticulars particulars) =>
        new([new Deed.Prepare(Preparation.DryFitted)], new Work { PerUnit = PerUnit.For(job.Size) });
}
