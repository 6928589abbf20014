using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats;

/// <summary>Particulars of <see cref="Staining"/>.</summary>
public sealed record Stained(
    [Says("The paint or mix.")] Paint With,
    [Says("How it is put on.")] Method By = Method.Brush,
    [Says("How many coats.")] int Coats = 1);

/// <summary>Lays a stain that runs into the recesses.</summary>
public sealed class Staining : Verb<Stained>
{
    private static readonly Effort PerCoat = new(1, 0.1, 40, 0.006);

    /// <inheritdoc/>
    public override string Name => "stain";

    /// <inheritdoc/>
    public override string Summary => "Colours and shades in one go with a stain.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Stained particulars)
    {
        var layer = Laying.LayerOf(
            particulars.With, LayerRole.Colour, particulars.By, coats: particulars.Coats, technique: Technique.Stain);
        return Laying.Lay(job, layer, PerCoat);
    }
}
