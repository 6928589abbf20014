using Pipeline.Abstractions;
using Pipeline.Plugins.Safety;

namespace Pipeline.Plugins.Finishing;

/// <summary>Particulars of <see cref="Wait"/>.</summary>
public sealed record Waiting(
    [Says("How long.")] Drying For,
    [Says("Drying is forced at this temperature of the air.")] Temperature? Heat = null);

/// <summary>Waits a given time.</summary>
public sealed class Wait : Verb<Waiting>
{
    /// <inheritdoc/>
    public override string Name => "wait";

    /// <inheritdoc/>
    public override string Summary => "Leaves the piece alone for a time.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Preparation;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Waiting particulars)
    {
        return new Intent(
            [new Deed.Rest(particulars.For) { Heat = particulars.Heat }],
            new Work
            {
                Unattended = particulars.For,
            })
        {
            Cautions = particulars.Heat is null ? [] : [Cautions.Heat],
        };
    }
}
