using Pipeline.Abstractions;

namespace Pipeline.Plugins.Decals;

/// <summary>Softens decals.</summary>
public sealed class Soften : Verb<NoParticulars>
{
    private static readonly Effort PerUnit = new(0.8, 0.005, 40, 0);

    /// <inheritdoc/>
    public override string Name => "soften";

    /// <inheritdoc/>
    public override string Summary => "Softens seated decals so that they draw down over detail; do not touch them until they are dry.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, NoParticulars particulars) =>
        new([new Deed.SoftenDecal()], new Work { PerUnit = PerUnit.For(job.Size), NeedsDryingPlace = true, Aids = [Liquid.DecalSoftener.Spoken()] });
}
