using Pipeline.Abstractions;

namespace Pipeline.Plugins.Finishing;

/// <summary>Particulars of <see cref="TouchUp"/>.</summary>
public sealed record TouchingUp(
    [Says("The paint or mix.")] Paint With);

/// <summary>Mends small faults.</summary>
public sealed class TouchUp : Verb<TouchingUp>
{
    private static readonly Effort PerUnit = new(1.5, 0.05, 40, 0.0062);

    /// <inheritdoc/>
    public override string Name => "touch-up";

    /// <inheritdoc/>
    public override string Summary => "Mends chips and slips with the same mix and the same finish.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, TouchingUp particulars)
    {
        var layer = Laying.LayerOf(particulars.With, LayerRole.Colour, Method.Brush, Body.Thin);
        return Laying.Lay(job, layer, PerUnit);
    }
}
