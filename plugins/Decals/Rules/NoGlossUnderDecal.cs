using Pipeline.Abstractions;

namespace Pipeline.Plugins.Decals.Rules;

/// <summary>A decal on matt or satin ground.</summary>
public sealed class NoGlossUnderDecal : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A decal goes on gloss.";

    /// <inheritdoc/>
    public override StepKind? OnlyKind => StepKind.Coat;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        if (moment.Step.Kind != StepKind.Coat || moment.Step.Coat() is not { } coat)
            yield break;
        if (coat.Role != LayerRole.Decal)
            yield break;
        foreach (var area in moment.Reached())
        {
            var sheen = moment.Before[area].Sheen;
            if (sheen >= Sheen.Gloss)
                continue;
            var ground = moment.Before[area].Top is { } top ? top.Name : "bare " + moment.Before[area].Material.Name;
            yield return moment.Says(
                sheen == Sheen.Matt ? Level.Warning : Level.Note,
                area,
                $"The decal on {{areas}} goes on {sheen.ToString().ToLowerInvariant()} ground ({ground}): air caught under the film shows as silver.",
                "Lay a gloss varnish on {areas} first.")
                .MendedBy(moment.VarnishFirst(moment.Before[area].Top, Sheen.Gloss));
        }
    }
}
