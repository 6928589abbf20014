using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats;

/// <summary>Particulars of <see cref="DryBrush"/>.</summary>
public sealed record DryBrushing(
    [Says("The paint or mix.")] Paint With);

/// <summary>Catches raised edges.</summary>
public sealed class DryBrush : Verb<DryBrushing>
{
    private static readonly Effort PerUnit = new(1, 0.1, 40, 0.008);

    /// <inheritdoc/>
    public override string Name => "dry-brush";

    /// <inheritdoc/>
    public override string Summary => "Catches raised edges with an almost dry brush.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, DryBrushing particulars)
    {
        var layer = Laying.LayerOf(particulars.With, LayerRole.Colour, Method.Brush, Body.Mist, technique: Technique.DryBrush);
        return Laying.Lay(job, layer, PerUnit);
    }
}
