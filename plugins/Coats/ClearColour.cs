using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats;

/// <summary>Particulars of <see cref="ClearColour"/>.</summary>
public sealed record ClearColouring(
    [Says("The paint or mix.")] Paint With,
    [Says("How it is put on.")] Method By,
    [Says("How many equal passes; every model of a batch gets the same.")] int Coats,
    [Says("How thick each coat is; an airbrush lays it thin, brush and rattle can heavy.")] Body? Body = null,
    [Says("Areas that overspray may reach because it is meant, or all.")] AreaNames? Overspray = null,
    [Says("A plain tint, not meant to let bright metal shine through.")] bool Tint = false);

/// <summary>Lays transparent colour over a bright ground.</summary>
public sealed class ClearColour : Verb<ClearColouring>
{
    private static readonly Effort PerPass = new(0.2, 0.016, 40, 0.0024);

    /// <inheritdoc/>
    public override string Name => "clear-colour";

    /// <inheritdoc/>
    public override string Summary => "Lays transparent colour over bright metal, in equal passes: depth is colour.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, ClearColouring particulars)
    {
        var layer = Laying.LayerOf(
            particulars.With,
            LayerRole.Colour,
            particulars.By,
            particulars.Body,
            particulars.Coats,
            particulars.Tint ? Technique.Plain : Technique.ClearColour);
        return Laying.Lay(job, layer, particulars.By is Method.Airbrush or Method.Aerosol ? PerPass : Coat.Brushed, particulars.Overspray);
    }
}
