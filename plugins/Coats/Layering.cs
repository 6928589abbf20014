using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats;

/// <summary>Particulars of <see cref="Layering"/>.</summary>
public sealed record Layered(
    [Says("The paint or mix.")] Paint With,
    [Says("How many coats.")] int Coats = 1);

/// <summary>Lays lights and shades over each other.</summary>
public sealed class Layering : Verb<Layered>
{
    private static readonly Effort PerCoat = new(4, 0.2, 40, 0.003);

    /// <inheritdoc/>
    public override string Name => "layer";

    /// <inheritdoc/>
    public override string Summary => "Lays lights and shades over the base, step by step, with a brush.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Layered particulars)
    {
        var layer = Laying.LayerOf(
            particulars.With, LayerRole.Colour, Method.Brush, coats: particulars.Coats, technique: Technique.Layering);
        return Laying.Lay(job, layer, PerCoat);
    }
}
