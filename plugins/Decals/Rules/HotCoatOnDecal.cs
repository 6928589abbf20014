using Pipeline.Abstractions;

namespace Pipeline.Plugins.Decals.Rules;

/// <summary>The first coat over a bare decal is a wet one with strong solvent.</summary>
public sealed class HotCoatOnDecal : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "The first lacquer over a decal is only misted on.";

    /// <inheritdoc/>
    protected override bool LooksAt(Layer coat) => coat.IsHot() && coat.IsWet();

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        if (surface.Top is not { Role: LayerRole.Decal } decal)
            return null;
        return moment.Says(
            Level.Warning,
            area,
            $"{coat.Name} goes wet on the bare decal of {{areas}}: the strong solvent can craze its film.",
            "Mist it on twice first ('body: mist', 'coats: 2'), then lay the wet coat.",
            new Pointer(decal.Step, "the decal was put on here"))
            .MendedBy(moment.MistFirst(coat));
    }
}
