using Pipeline.Abstractions;
using Pipeline.Plugins.Safety;

namespace Pipeline.Plugins.Preparing;

/// <summary>Particulars of <see cref="Sand"/>.</summary>
public sealed record Sanding(
    [Says("Wet, so that no dust flies (yes), or dry (no).")] bool? Wet = null);

/// <summary>Sands smooth.</summary>
public sealed class Sand : Verb<Sanding>
{
    private static readonly Effort PerUnit = new(0.5, 0.03, 40, 0.0026);

    /// <inheritdoc/>
    public override string Name => "sand";

    /// <inheritdoc/>
    public override string Summary => "Sands smooth: fillers, seams, sealed board between coats.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Preparation;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Sanding particulars)
    {
        return new Intent(
            [job.Worked(Preparation.Sanded, particulars.Wet)],
            new Work { PerUnit = PerUnit.For(job.Size), SetUp = new Attended(1), PutAway = new Attended(3), Aids = ["abrasive paper"] })
        {
            Cautions = job.IsAnywhere(material => material.HarmfulDust) ? [Cautions.HarmfulDust] : [],
        };
    }
}
