using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats;

/// <summary>Particulars of <see cref="PreShade"/>.</summary>
public sealed record PreShading(
    [Says("The paint or mix.")] Paint With,
    [Says("How it is put on.")] Method By = Method.Airbrush,
    [Says("Areas that overspray may reach because it is meant, or all.")] AreaNames? Overspray = null);

/// <summary>Sprays a map of light and shade.</summary>
public sealed class PreShade : Verb<PreShading>
{
    private static readonly Effort PerCoat = new(0.5, 0.03, 40, 0.006);

    /// <inheritdoc/>
    public override string Name => "pre-shade";

    /// <inheritdoc/>
    public override string Summary => "Sprays light and shade under the colour to come.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, PreShading particulars)
    {
        var layer = Laying.LayerOf(particulars.With, LayerRole.Colour, particulars.By, technique: Technique.PreShade);
        return Laying.Lay(job, layer, PerCoat, particulars.Overspray);
    }
}
