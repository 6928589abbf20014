using Pipeline.Abstractions;

namespace Pipeline.Plugins.Weathering.Rules;

/// <summary>A wash all over matt paint that nothing seals.</summary>
public sealed class WashOnMatt : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "An all-over wash or filter goes on satin or gloss.";

    /// <inheritdoc/>
    public override StepKind? OnlyKind => StepKind.Coat;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        if (moment.Step.Kind != StepKind.Coat || moment.Step.Coat() is not { } coat)
            yield break;
        if (coat is not { Role: LayerRole.Effect, Technique: Technique.Wash or Technique.Filter, IsMeantToStain: false })
            yield break;
        foreach (var area in moment.Reached())
        {
            var surface = moment.Before[area];
            if (surface.Sheen != Sheen.Matt || surface.Ground() is not { Role: not (LayerRole.Varnish or LayerRole.Texture) } top)
                continue;
            yield return moment.Says(
                Level.Warning,
                area,
                $"{coat.Name} goes all over the matt, unsealed {top.Name} of {{areas}}: it leaves tide marks and a grey cast.",
                "Lay a satin or gloss varnish first, or say 'stains: yes' if it is meant to stain.")
                .MendedBy(moment.VarnishFirst(surface.Top, Sheen.Satin));
        }
    }
}
