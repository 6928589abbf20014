using Pipeline.Abstractions;

namespace Pipeline.Plugins.Basing;

/// <summary>Particulars of <see cref="Scatter"/>.</summary>
public sealed record Scattering(
    [Says("What is stuck on.")] string With = "scatter");

/// <summary>Dresses a base.</summary>
public sealed class Scatter : Verb<Scattering>
{
    private static readonly Effort PerUnit = new(1.5, 0.05, 40, 0.01);

    /// <inheritdoc/>
    public override string Name => "scatter";

    /// <inheritdoc/>
    public override string Summary => "Sticks tufts, grass, leaves or snow on a base with white glue.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Scattering particulars)
    {
        var intent = Paste.Lay(job, particulars.With, LayerRole.Scatter, Body.Thin, PerUnit);
        return intent with { Work = intent.Work with { Aids = ["PVA"] } };
    }
}
