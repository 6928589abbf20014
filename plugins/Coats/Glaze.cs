using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats;

/// <summary>Particulars of <see cref="Glaze"/>.</summary>
public sealed record Glazing(
    [Says("The paint or mix.")] Paint With,
    [Says("How many coats.")] int Coats = 1);

/// <summary>Lays thin transparent colour by brush.</summary>
public sealed class Glaze : Verb<Glazing>
{
    private static readonly Effort PerCoat = new(2, 0.12, 40, 0.005);

    /// <inheritdoc/>
    public override string Name => "glaze";

    /// <inheritdoc/>
    public override string Summary => "Shifts a hue with thin transparent colour by brush.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Glazing particulars)
    {
        var layer = Laying.LayerOf(particulars.With, LayerRole.Colour, Method.Brush, Body.Thin, particulars.Coats, Technique.Glaze);
        return Laying.Lay(job, layer, PerCoat);
    }
}
