using Pipeline.Abstractions;
using Pipeline.Plugins.Safety;

namespace Pipeline.Plugins.Preparing;

/// <summary>Particulars of <see cref="Pin"/>.</summary>
public sealed record Pinning(
    [Says("How many pins in one unit.")] int Pins = 1);

/// <summary>Sets pins.</summary>
public sealed class Pin : Verb<Pinning>
{
    private static readonly Effort PerPin = new(3.5, 0.02, 40, 0.0007);

    /// <inheritdoc/>
    public override string Name => "pin";

    /// <inheritdoc/>
    public override string Summary => "Drills and sets metal pins into joints that must bear weight.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Preparation;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Pinning particulars)
    {
        return new Intent(
            [new Deed.Prepare(Preparation.Drilled), new Deed.Prepare(Preparation.Pinned) { IsPinned = true }],
            new Work
            {
                PerUnit = PerPin.For(job.Size) * Counts.Checked("pins", particulars.Pins),
                SetUp = new Attended(2),
                PutAway = new Attended(2),
                Aids = ["pin vice", "wire for pins"],
            })
        {
            Cautions = [Cautions.Blades, .. job.IsAnywhere(material => material.HarmfulDust) ? (Caution[])[Cautions.HarmfulDust] : []],
        };
    }
}
