using Pipeline.Abstractions;
using Pipeline.Plugins.Safety;

namespace Pipeline.Plugins.Finishing;

/// <summary>Particulars of <see cref="Cure"/>.</summary>
public sealed record Curing(
    [Says("The state to wait for.")] DryingState To = DryingState.Cured,
    [Says("Drying is forced at this temperature of the air.")] Temperature? Heat = null);

/// <summary>Waits for a drying state.</summary>
public sealed class Cure : Verb<Curing>
{
    /// <inheritdoc/>
    public override string Name => "cure";

    /// <inheritdoc/>
    public override string Summary => "Leaves the piece until its top layer has reached a drying state.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Preparation;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Curing particulars)
    {
        return new Intent([new Deed.Await(particulars.To) { Heat = particulars.Heat }], new Work())
        {
            Cautions = particulars.Heat is null ? [] : [Cautions.Heat],
        };
    }
}
