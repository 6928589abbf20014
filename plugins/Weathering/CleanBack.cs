using Pipeline.Abstractions;
using Pipeline.Plugins.Safety;

namespace Pipeline.Plugins.Weathering;

/// <summary>Particulars of <see cref="CleanBack"/>.</summary>
public sealed record CleaningBack(
    [Says("The liquid it is cleaned back with.")] Liquid With);

/// <summary>Cleans an effect back.</summary>
public sealed class CleanBack : Verb<CleaningBack>
{
    private static readonly Effort PerUnit = new(1, 0.035, 40, 0.006);

    /// <inheritdoc/>
    public override string Name => "clean-back";

    /// <inheritdoc/>
    public override string Summary => "Wipes and blends an effect back with its thinner while it can still be moved.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Removal;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, CleaningBack particulars)
    {
        return new Intent(
            [new Deed.CleanBack(particulars.With.Spoken(), particulars.With.Carrier()) { Liquid = particulars.With }],
            new Work { PerUnit = PerUnit.For(job.Size), SetUp = new Attended(1), PutAway = new Attended(2) })
        {
            Cautions =
            [
                .. Cautions.Of(particulars.With),
                .. particulars.With.Carrier() == Carrier.Spirit ? (Caution[])[Cautions.OilyRags] : [],
            ],
        };
    }
}
