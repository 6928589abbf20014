using Pipeline.Abstractions;

namespace Pipeline.Plugins.Weathering;

/// <summary>Particulars of <see cref="Wash"/>.</summary>
public sealed record Washing(
    [Says("The paint or mix.")] Paint With,
    [Says("How it is put on.")] Method By = Method.Brush,
    [Says("Led into the recesses only.")] bool Pin = false,
    [Says("Meant to stain what lies under it.")] bool Stains = false,
    [Says("Run on purpose into an effect that is still wet.")] bool WetInWet = false);

/// <summary>Shades recesses.</summary>
public sealed class Wash : Verb<Washing>
{
    private static readonly Effort PerUnit = new(1, 0.07, 40, 0.0105);

    /// <inheritdoc/>
    public override string Name => "wash";

    /// <inheritdoc/>
    public override string Summary => "Lets thin dark colour settle into recesses, all over or led there with a fine brush.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Washing particulars)
    {
        var technique = particulars.Pin ? Technique.PinWash : Technique.Wash;
        var layer = Laying.LayerOf(particulars.With, LayerRole.Effect, particulars.By, Body.Thin, technique: technique) with
        {
            IsMeantToStain = particulars.Stains,
            IsWetInWet = particulars.WetInWet,
        };
        return Laying.Lay(job, layer, PerUnit, putAway: 5);
    }
}
