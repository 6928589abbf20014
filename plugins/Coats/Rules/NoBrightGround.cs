using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>Clear colour over a ground that reflects nothing.</summary>
public sealed class NoBrightGround : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "Clear colour meant to glow lies on smooth, bright metal.";

    /// <inheritdoc/>
    protected override bool LooksAt(Layer coat) => coat.Technique == Technique.ClearColour;

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        if (surface.ShownColour() is not { } ground || WasSaid(surface) || Fault(surface, ground) is not { } fault)
            return null;
        return moment.Says(
            Level.Warning,
            area,
            $"{coat.Name} goes over {fault} on {{areas}}: nothing reflects under it, so it only tints.",
            "Lay bright metal on a smooth ground first, or say 'tint: yes' if a plain tint is meant.",
            new Pointer(ground.Step, $"{ground.Name} was laid here"));
    }

    private static string? Fault(Surface surface, Layer ground) =>
        !ground.IsMetallic ? $"{ground.Name}, which is no metal"
        : surface.Sheen == Sheen.Matt ? "a matt surface"
        : ground.Paint.IsDark() ? $"dark {ground.Name}"
        : null;

    // the first clear colour over a ground is the step to change
    private static bool WasSaid(Surface surface)
    {
        for (var i = surface.Layers.Count - 1; i >= 0; i--)
        {
            if (surface.Layers[i].Technique == Technique.ClearColour)
                return true;
            if (surface.Layers[i].Covers())
                return false;
        }

        return false;
    }
}
