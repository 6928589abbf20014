using Pipeline.Abstractions;
using Pipeline.Plugins.Safety;

namespace Pipeline.Plugins.Preparing;

/// <summary>Cuts parts from their frame.</summary>
public sealed class Cut : Verb<NoParticulars>
{
    private static readonly Effort PerUnit = new(1.5, 0.04, 40, 0.0065);

    /// <inheritdoc/>
    public override string Name => "cut";

    /// <inheritdoc/>
    public override string Summary => "Cuts parts from their frame or their supports.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Preparation;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, NoParticulars particulars)
    {
        return new Intent(
            [new Deed.Prepare(Preparation.Cut)],
            new Work
            {
                PerUnit = PerUnit.For(job.Size),
                SetUp = new Attended(2),
                PutAway = new Attended(2),
            })
        {
            Cautions = [Cautions.Blades],
        };
    }
}
