using Pipeline.Abstractions;

namespace Pipeline.Plugins.Weathering;

/// <summary>Particulars of <see cref="Filter"/>.</summary>
public sealed record Filtering(
    [Says("The paint or mix.")] Paint With,
    [Says("How it is put on.")] Method By = Method.Brush,
    [Says("Run on purpose into an effect that is still wet.")] bool WetInWet = false);

/// <summary>Tints a whole area.</summary>
public sealed class Filter : Verb<Filtering>
{
    private static readonly Effort PerUnit = new(1, 0.035, 40, 0.0034);

    /// <inheritdoc/>
    public override string Name => "filter";

    /// <inheritdoc/>
    public override string Summary => "Tints a whole area with very thin colour.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Filtering particulars)
    {
        var layer = Laying.LayerOf(particulars.With, LayerRole.Effect, particulars.By, Body.Thin, technique: Technique.Filter) with
        {
            IsWetInWet = particulars.WetInWet,
        };
        return Laying.Lay(job, layer, PerUnit);
    }
}
