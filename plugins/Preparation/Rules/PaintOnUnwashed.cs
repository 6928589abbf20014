using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>Paint on a material that carries release agent or grease, and no wash before it.</summary>
public sealed class PaintOnUnwashed : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "Resin and cast metal are washed before the first coat.";

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        if (!surface.Material.NeedsWashing || surface.Top is not null || surface.Has(Preparation.Washed) || surface.Has(Preparation.Stripped))
            return null;
        return moment.Says(
            Level.Error,
            area,
            $"{coat.Name} goes on {surface.Material.Name} that was never washed: release agent on {{areas}} lets it peel.",
            "Add 'clean: all' at the start of the route and let it dry.")
            .MendedBy(moment.PutAtStart("clean"));
    }
}
