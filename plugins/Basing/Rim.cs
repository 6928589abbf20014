using Pipeline.Abstractions;

namespace Pipeline.Plugins.Basing;

/// <summary>Particulars of <see cref="Rim"/>.</summary>
public sealed record Rimming(
    [Says("The paint or mix.")] Paint With,
    [Says("How it is put on.")] Method By = Method.Brush,
    [Says("How many coats.")] int Coats = 1,
    [Says("Areas that overspray may reach because it is meant, or all.")] AreaNames? Overspray = null);

/// <summary>Paints the rim.</summary>
public sealed class Rim : Verb<Rimming>
{
    private static readonly Effort PerCoat = new(0.9, 0.02, 40, 0.003);

    /// <inheritdoc/>
    public override string Name => "rim";

    /// <inheritdoc/>
    public override string Summary => "Paints the rim of a base in one clean colour.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Rimming particulars)
    {
        var layer = Laying.LayerOf(particulars.With, LayerRole.Colour, particulars.By, coats: particulars.Coats);
        return Laying.Lay(job, layer, PerCoat, particulars.Overspray);
    }
}
