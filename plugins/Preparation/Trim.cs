using Pipeline.Abstractions;
using Pipeline.Plugins.Safety;

namespace Pipeline.Plugins.Preparing;

/// <summary>Particulars of <see cref="Trim"/>.</summary>
public sealed record Trimming(
    [Says("Wet, so that no dust flies (yes), or dry (no).")] bool? Wet = null);

/// <summary>Cleans up mould lines.</summary>
public sealed class Trim : Verb<Trimming>
{
    private static readonly Effort Cast = new(4, 0.13, 40, 0.004);

    private static readonly Effort LaserCut = new(1, 0.02, 40, 0.003);

    /// <inheritdoc/>
    public override string Name => "trim";

    /// <inheritdoc/>
    public override string Summary => "Cleans up mould lines, gates and support marks.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Preparation;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Trimming particulars)
    {
        // laser-cut board has no mould lines, only tabs and soot
        var perUnit = job.IsAnywhere(material => !material.IsPorous) ? Cast : LaserCut;
        return new Intent(
            [job.Worked(Preparation.Trimmed, particulars.Wet)],
            new Work { PerUnit = perUnit.For(job.Size), SetUp = new Attended(2), PutAway = new Attended(5) })
        {
            Cautions = [Cautions.Blades, .. job.IsAnywhere(material => material.HarmfulDust) ? (Caution[])[Cautions.HarmfulDust] : []],
        };
    }
}
