using Pipeline.Abstractions;

namespace Pipeline.Plugins.Decals.Rules;

/// <summary>Softener over paint that it dissolves.</summary>
public sealed class SoftenerOnSoftGround : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Softener meets only ground that bears it.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.First<Deed.SoftenDecal>() is not null;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        foreach (var area in moment.Reached())
        {
            var surface = moment.Before[area];
            if (!surface.Has(LayerRole.Decal) || surface.Ground() is not { Family: { } family } ground || moment.Tables.Rewetting(Liquid.DecalSoftener, family) is not { WhenDry: >= Bite.Lifts } row)
                continue;
            var pointer = new Pointer(ground.Step, $"{ground.Name} was laid here");
            if (row.WhenCured >= Bite.Lifts)
                yield return moment.Says(Level.Error, area, $"Softener eats the bare {ground.Name} under the decal on {{areas}}.", "Varnish it before the decals, or leave it at setter.", pointer);
            else if (ground.IsSpirit() && moment.WaitsFor(ground, DryingState.Cured, area, $"Softener eats {ground.Name} until it has cured.", "Wait, or leave it at setter.") is { } wait)
                yield return wait;
            else if (ground.IsWaterborne() && ground.Role != LayerRole.Varnish)
                yield return moment.Says(Level.Warning, area, $"Softener can eat the unvarnished {ground.Name} under the decal on {{areas}}.", "Lay a gloss varnish before the decals, try it on a card, or leave it at setter.", pointer);
        }
    }
}
