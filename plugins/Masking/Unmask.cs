using Pipeline.Abstractions;

namespace Pipeline.Plugins.Masking;

/// <summary>Takes masks off.</summary>
public sealed class Unmask : Verb<NoParticulars>
{
    private static readonly Effort PerUnit = new(1, 0.05, 40, 0.0066);

    /// <inheritdoc/>
    public override string Name => "unmask";

    /// <inheritdoc/>
    public override string Summary => "Takes masks off.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Removal;

    /// <inheritdoc/>
    public override Target Target => Target.Masks;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, NoParticulars particulars)
    {
        Deed[] off = [.. job.Named.Select(mask => new Deed.TakeMaskOff(mask))];
        return new Intent([.. off], new Work { PerUnit = PerUnit.For(job.Size) });
    }
}
