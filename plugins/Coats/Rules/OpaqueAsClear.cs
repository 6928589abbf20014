using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>A paint that covers, laid as transparent colour.</summary>
public sealed class OpaqueAsClear : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "What is laid as clear colour is clear.";

    /// <inheritdoc/>
    protected override bool LooksAt(Layer coat) => coat.Technique == Technique.ClearColour;

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        // inks and varnishes let light through whatever the file says of them
        if (coat.IsClear || coat.IsStain() || coat.Family is { IsVarnish: true })
            return null;
        return moment.Says(
            Level.Warning,
            area,
            coat.IsMetallic
                ? $"{coat.Name} is metallic: laid as clear colour it hides the ground of {{areas}}."
                : $"The file does not call {coat.Name} clear: a paint that covers hides the ground of {{areas}} instead of letting it shine through.",
            coat.IsMetallic
                ? "Take a clear colour, or lay it with 'coat'."
                : $"If it is transparent, say 'clear: yes' where {coat.Name} is listed; else lay it with 'coat', or thinned with 'glaze'.");
    }
}
