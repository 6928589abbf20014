using Pipeline.Abstractions;
using Pipeline.Plugins.Safety;

namespace Pipeline.Plugins.Masking;

/// <summary>Particulars of <see cref="Mask"/>.</summary>
public sealed record MaskingOff(
    [Says("What to mask with.")] MaskMaterial Using,
    [Says("The mask it lies over.")] MaskName? Over = null);

/// <summary>Puts a mask on.</summary>
public sealed class Mask : Verb<MaskingOff>
{
    /// <inheritdoc/>
    public override string Name => "mask";

    /// <inheritdoc/>
    public override string Summary => "Covers areas so that what follows does not reach them.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Masking;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, MaskingOff particulars)
    {
        var material = particulars.Using;
        if (particulars.Over is { } over && over.Name == job.As)
            throw new ParticularException("over", "The mask cannot lie over itself; name the mask under it, or leave it out.");
        return new Intent(
            [new Deed.PutMaskOn(job.As, material, particulars.Over?.Name)],
            new Work
            {
                PerUnit = EffortWith(material.Kind).For(job.Size),
                SetUp = new Attended(material.Kind is MaskKind.Tape or MaskKind.Film ? 2 : 1),
                PutAway = new Attended(2),
            })
        {
            Cautions = material.Kind is MaskKind.Tape or MaskKind.Film ? [Cautions.Blades] : [],
        };
    }

    private static Effort EffortWith(MaskKind kind) => kind switch
    {
        MaskKind.Tape => new(4, 0.12, 40, 0.02),
        MaskKind.Film => new(1.5, 0.15, 40, 0.015),
        MaskKind.Liquid => new(1.5, 0.05, 40, 0.0025),
        MaskKind.Putty => new(1.2, 0.04, 40, 0.005),
        _ => new(1, 0.02, 40, 0.003),
    };
}
