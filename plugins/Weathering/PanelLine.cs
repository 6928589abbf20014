using Pipeline.Abstractions;

namespace Pipeline.Plugins.Weathering;

/// <summary>Particulars of <see cref="PanelLine"/>.</summary>
public sealed record PanelLining(
    [Says("The paint or mix.")] Paint With,
    [Says("Run on purpose into an effect that is still wet.")] bool WetInWet = false);

/// <summary>Draws dark lines in panel joints.</summary>
public sealed class PanelLine : Verb<PanelLining>
{
    private static readonly Effort PerUnit = new(0.5, 0.07, 40, 0.011);

    /// <inheritdoc/>
    public override string Name => "panel-line";

    /// <inheritdoc/>
    public override string Summary => "Runs dark colour along panel joints, to be cleaned back.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, PanelLining particulars)
    {
        var layer = Laying.LayerOf(particulars.With, LayerRole.Effect, Method.Brush, Body.Thin, technique: Technique.PanelLine) with
        {
            IsWetInWet = particulars.WetInWet,
        };
        return Laying.Lay(job, layer, PerUnit);
    }
}
