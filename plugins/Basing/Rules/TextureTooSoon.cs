using Pipeline.Abstractions;

namespace Pipeline.Plugins.Basing.Rules;

/// <summary>Paint over paste or glued sand that is still wet inside.</summary>
public sealed class TextureTooSoon : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "Paste and glued sand are dry before anything goes over them.";

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        return surface.Top is { } top && moment.ConcernOf(coat, top) == Concern.OverTexture
            ? moment.WaitsFor(top, DryingState.Recoatable, area, $"{top.Name} that is wet inside cracks under {coat.Name}, and sand moves.", "Leave it overnight.")
            : null;
    }
}
