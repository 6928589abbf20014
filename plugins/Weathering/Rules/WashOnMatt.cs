using Pipeline.Abstractions;

namespace Pipeline.Plugins.Weathering.Rules;

/// <summary>A wash all over matt paint that nothing seals.</summary>
public sealed class WashOnMatt : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "An all-over wash or filter goes on satin or gloss.";

    /// <inheritdoc/>
    protected override bool LooksAt(Layer coat) =>
        coat is { Role: LayerRole.Effect, Technique: Technique.Wash or Technique.Filter, IsMeantToStain: false };

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        if (surface.Sheen != Sheen.Matt || EffectWithoutBarrier.IsFor(moment, coat, surface))
            return null;
        if (surface.Top?.Role is LayerRole.Decal or LayerRole.Powder || surface.Ground() is not { Role: not (LayerRole.Varnish or LayerRole.Texture) } top)
            return null;
        return moment.Says(
            Level.Warning,
            area,
            $"{coat.Name} goes all over the matt, unsealed {top.Name} of {{areas}}: it leaves tide marks and a grey cast.",
            "Lay a satin or gloss varnish first, or say 'stains: yes' if it is meant to stain.")
            .MendedBy(moment.VarnishFirst(surface.Top, Sheen.Satin));
    }
}
