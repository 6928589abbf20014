using Pipeline.Abstractions;
using Pipeline.Plugins.Safety;

namespace Pipeline.Plugins.Preparing;

/// <summary>Particulars of <see cref="Drill"/>.</summary>
public sealed record Drilling(
    [Says("How many holes in one unit.")] int Holes = 1,
    [Says("Wet, so that no dust flies (yes), or dry (no).")] bool? Wet = null);

/// <summary>Drills holes.</summary>
public sealed class Drill : Verb<Drilling>
{
    private static readonly Effort PerHole = new(1.5, 0.01, 40, 0.0003);

    /// <inheritdoc/>
    public override string Name => "drill";

    /// <inheritdoc/>
    public override string Summary => "Drills holes: barrels, sockets, holes for pins.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Preparation;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Drilling particulars)
    {
        return new Intent(
            [job.Worked(Preparation.Drilled, particulars.Wet)],
            new Work
            {
                PerUnit = PerHole.For(job.Size) * Counts.Checked("holes", particulars.Holes),
                SetUp = new Attended(2),
                PutAway = new Attended(2),
                Aids = ["pin vice"],
            })
        {
            Cautions = [Cautions.Blades, .. job.IsAnywhere(material => material.HarmfulDust) ? (Caution[])[Cautions.HarmfulDust] : []],
        };
    }
}
