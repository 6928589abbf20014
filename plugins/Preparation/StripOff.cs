using Pipeline.Abstractions;
using Pipeline.Plugins.Safety;

namespace Pipeline.Plugins.Preparing;

/// <summary>Particulars of <see cref="StripOff"/>.</summary>
public sealed record Stripping(
    [Says("What takes it off; nothing for porous material, which is sanded and never soaked.")] Liquid? With = null,
    [Says("How long it soaks.")] Drying? Soak = null,
    [Says("In an ultrasonic bath.")] bool Ultrasonic = false);

/// <summary>Strips a failed coat.</summary>
public sealed class StripOff : Verb<Stripping>
{
    private static readonly Effort PerUnit = new(4, 0.1, 40, 0.01);

    /// <inheritdoc/>
    public override string Name => "strip";

    /// <inheritdoc/>
    public override string Summary => "Takes a failed coat off, back to the bare material.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Removal;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Stripping particulars)
    {
        if (particulars.With is null && (particulars.Soak is not null || particulars.Ultrasonic))
            throw new ParticularException("with", "Say what it soaks in, such as with: alkaline cleaner.");
        if (particulars.With is null && !job.IsAnywhere(material => material.IsPorous))
            throw new ParticularException("with", "Say what takes the coat off, such as with: alkaline cleaner; only porous material is sanded.");
        var deed = particulars.With is { } liquid
            ? new Deed.Strip(liquid.Spoken(), liquid.Carrier())
            {
                Liquid = liquid,
                IsUltrasonic = particulars.Ultrasonic,
                Settles = Settings.Dries(job).Sets,
                IsFromFile = Settings.Dries(job).IsFromFile,
            }
            : new Deed.Strip("sandpaper", Carrier.None);
        var hands = PerUnit.For(job.Size);
        return new Intent(
            [deed],
            particulars.With is null
                ? new Work { PerUnit = hands, SetUp = new Attended(5), PutAway = new Attended(10) }
                : Baths.WorkOf(hands, job.Model.Count, particulars.Soak ?? Drying.Hours(12), setUp: 5, putAway: 10))
        {
            Cautions =
            [
                .. particulars.With is { } used ? Cautions.Of(used) : [],
                .. particulars.Ultrasonic ? (Caution[])[Cautions.UltrasonicBath] : [],
                .. particulars.With is null && job.IsAnywhere(material => material.HarmfulDust) ? (Caution[])[Cautions.HarmfulDust] : [],
            ],
        };
    }
}
