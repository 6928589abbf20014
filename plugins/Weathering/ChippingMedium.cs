using Pipeline.Abstractions;

namespace Pipeline.Plugins.Weathering;

/// <summary>Particulars of <see cref="ChippingMedium"/>.</summary>
public sealed record ChippingGround(
    [Says("The paint or mix.")] Paint With,
    [Says("How it is put on.")] Method By = Method.Airbrush);

/// <summary>Lays a chipping medium.</summary>
public sealed class ChippingMedium : Verb<ChippingGround>
{
    private static readonly Effort PerUnit = new(0.5, 0.035, 40, 0.0075);

    /// <inheritdoc/>
    public override string Name => "chipping-medium";

    /// <inheritdoc/>
    public override string Summary => "Lays a medium that lets the coat over it be chipped away with water.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, ChippingGround particulars)
    {
        var layer = Laying.LayerOf(particulars.With, LayerRole.Effect, particulars.By, technique: Technique.ChippingMedium);
        return Laying.Lay(job, layer, PerUnit);
    }
}
