using Pipeline.Abstractions;
using Pipeline.Plugins.Safety;

namespace Pipeline.Plugins.Preparing;

/// <summary>Particulars of <see cref="Clean"/>.</summary>
public sealed record Cleaning(
    [Says("What it is washed in; by default soapy water, and nothing wet for porous material.")] Liquid? With = null,
    [Says("In an ultrasonic bath.")] bool Ultrasonic = false);

/// <summary>Washes the bare piece.</summary>
public sealed class Clean : Verb<Cleaning>
{
    private static readonly Effort ByHand = new(0.8, 0.02, 40, 0.0013);

    /// <inheritdoc/>
    public override string Name => "clean";

    /// <inheritdoc/>
    public override string Summary => "Washes release agent and grease off; brushes dust off what must not get wet.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Preparation;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Cleaning particulars)
    {
        var porous = job.IsAnywhere(material => material.IsPorous);
        var liquid = particulars.With ?? (porous && !job.IsAnywhere(material => material.NeedsWashing) ? null : Liquid.SoapyWater);
        if (liquid is null && particulars.Ultrasonic)
            throw new ParticularException("ultrasonic", "A bath needs a liquid; say which, such as with: water.");
        var dries = liquid is null ? null : Settings.Dries(job);
        var hands = ByHand.For(job.Size);
        return new Intent(
            [
                new Deed.Prepare(Preparation.Washed, dries?.Sets, liquid?.Carrier() ?? Carrier.None)
                {
                    With = liquid?.Spoken(),
                    Liquid = liquid,
                    IsUltrasonic = particulars.Ultrasonic,
                    IsFromFile = dries is { IsFromFile: true },
                },
            ],
            particulars.Ultrasonic
                ? Baths.WorkOf(hands * 0.5, job.Model.Count, bath: new Drying(5), setUp: 5, putAway: 5)
                : new Work { PerUnit = hands, SetUp = new Attended(5), PutAway = new Attended(3) })
        {
            Cautions = [.. CautionsOf(job, liquid, particulars.Ultrasonic).Distinct()],
        };
    }

    private static IEnumerable<Caution> CautionsOf(Job job, Liquid? liquid, bool ultrasonic)
    {
        // the rinse of a print carries uncured resin
        if (liquid is not null && job.IsAnywhere(material => material.NeedsPostCure))
            return [Cautions.SkinSensitiser, Cautions.Waste, .. CautionsOf(liquid.Value, ultrasonic)];
        return liquid is { } wet ? CautionsOf(wet, ultrasonic) : [];
    }

    private static IEnumerable<Caution> CautionsOf(Liquid liquid, bool ultrasonic) =>
        ultrasonic ? [.. Cautions.Of(liquid), Cautions.UltrasonicBath] : Cautions.Of(liquid);
}
