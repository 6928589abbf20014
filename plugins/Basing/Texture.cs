using Pipeline.Abstractions;

namespace Pipeline.Plugins.Basing;

/// <summary>Particulars of <see cref="Texture"/>.</summary>
public sealed record Texturing(
    [Says("What is spread.")] string With = "texture paste",
    [Says("How thick it lies; thick paste dries overnight, a thin smear in a few hours.")] Body Body = Body.Heavy);

/// <summary>Gives a base its texture.</summary>
public sealed class Texture : Verb<Texturing>
{
    private static readonly Effort PerUnit = new(2, 0.08, 40, 0.014);

    /// <inheritdoc/>
    public override string Name => "texture";

    /// <inheritdoc/>
    public override string Summary => "Spreads texture paste or glues sand on a base.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Texturing particulars) =>
        Paste.Lay(job, particulars.With, LayerRole.Texture, particulars.Body, PerUnit);
}
