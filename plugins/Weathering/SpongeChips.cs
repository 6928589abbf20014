using Pipeline.Abstractions;

namespace Pipeline.Plugins.Weathering;

/// <summary>Particulars of <see cref="SpongeChips"/>.</summary>
public sealed record Sponging(
    [Says("The paint or mix.")] Paint With);

/// <summary>Dabs chips with a sponge.</summary>
public sealed class SpongeChips : Verb<Sponging>
{
    private static readonly Effort PerUnit = new(1, 0.035, 40, 0.0119);

    /// <inheritdoc/>
    public override string Name => "sponge";

    /// <inheritdoc/>
    public override string Summary => "Dabs chips and scuffs with a torn sponge.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Sponging particulars)
    {
        var layer = Laying.LayerOf(particulars.With, LayerRole.Colour, Method.Sponge, Body.Thin, technique: Technique.Sponge);
        var intent = Laying.Lay(job, layer, PerUnit, putAway: 2);
        return intent with { Work = intent.Work with { Aids = ["sponge"] } };
    }
}
