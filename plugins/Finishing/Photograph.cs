using Pipeline.Abstractions;

namespace Pipeline.Plugins.Finishing;

/// <summary>Photographs a piece.</summary>
public sealed class Photograph : Verb<NoParticulars>
{
    private static readonly Effort PerUnit = new(2, 0.03, 40, 0.0018);

    /// <inheritdoc/>
    public override string Name => "photograph";

    /// <inheritdoc/>
    public override string Summary => "Photographs the finished piece.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Preparation;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, NoParticulars particulars) =>
        new(
            [new Deed.Handle()],
            new Work { PerUnit = PerUnit.For(job.Size), SetUp = new Attended(10), PutAway = new Attended(5) });
}
