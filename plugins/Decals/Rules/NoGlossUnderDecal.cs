using Pipeline.Abstractions;

namespace Pipeline.Plugins.Decals.Rules;

/// <summary>A decal on matt or satin ground.</summary>
public sealed class NoGlossUnderDecal : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "A decal goes on gloss.";

    /// <inheritdoc/>
    protected override bool LooksAt(Layer coat) => coat.Role == LayerRole.Decal;

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        var sheen = surface.Sheen;
        if (sheen >= Sheen.Gloss)
            return null;
        var ground = surface.Top is { } top ? top.Name : "bare " + surface.Material.Name;
        return moment.Says(
            sheen == Sheen.Matt ? Level.Warning : Level.Note,
            area,
            $"The decal on {{areas}} goes on {sheen.ToString().ToLowerInvariant()} ground ({ground}): air caught under the film shows as silver.",
            "Lay a gloss varnish on {areas} first.")
            .MendedBy(moment.VarnishFirst(surface.Top, Sheen.Gloss));
    }
}
