using Pipeline.Abstractions;

namespace Pipeline.Plugins.Weathering;

/// <summary>Particulars of <see cref="Streak"/>.</summary>
public sealed record Streaking(
    [Says("The paint or mix.")] Paint With,
    [Says("Blended into oil paint that is still open.")] bool WetInWet = false);

/// <summary>Sets streaks.</summary>
public sealed class Streak : Verb<Streaking>
{
    private static readonly Effort PerUnit = new(1.5, 0.05, 40, 0.0108);

    /// <inheritdoc/>
    public override string Name => "streak";

    /// <inheritdoc/>
    public override string Summary => "Sets vertical streaks of grime or rust and blends them while they can be worked.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Streaking particulars)
    {
        var layer = Laying.LayerOf(particulars.With, LayerRole.Effect, Method.Brush, Body.Thin, technique: Technique.Streak) with
        {
            IsWetInWet = particulars.WetInWet,
        };
        return Laying.Lay(job, layer, PerUnit);
    }
}
