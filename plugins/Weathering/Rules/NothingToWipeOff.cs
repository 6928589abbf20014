using Pipeline.Abstractions;

namespace Pipeline.Plugins.Weathering.Rules;

/// <summary>A line, pin wash or streak on matt ground, where it cannot be wiped off.</summary>
public sealed class NothingToWipeOff : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "A line or streak that is cleaned back goes on satin or gloss.";

    /// <inheritdoc/>
    protected override bool LooksAt(Layer coat) =>
        coat is { Role: LayerRole.Effect, Technique: Technique.PanelLine or Technique.PinWash or Technique.Streak, IsMeantToStain: false, IsWetInWet: false };

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        if (surface.Sheen != Sheen.Matt || EffectWithoutBarrier.IsFor(moment, coat, surface))
            return null;
        if (surface.Top?.Role is LayerRole.Decal or LayerRole.Powder || surface.Ground() is not { Role: not LayerRole.Texture } || !IsCleanedBack(moment, area, coat.Technique))
            return null;
        return moment.Says(
            Level.Warning,
            area,
            $"The ground on {{areas}} is matt: {coat.Name} soaks in and will not wipe off.",
            "Lay a satin or gloss varnish first.")
            .MendedBy(moment.VarnishFirst(surface.Top, Sheen.Satin));
    }

    // lines and pin washes are always wiped at the edges; a streak only where the route says so
    private static bool IsCleanedBack(Moment moment, string area, Technique technique)
    {
        if (technique != Technique.Streak)
            return true;
        for (var i = moment.Step.Index + 1; i < moment.Route.Count; i++)
        {
            if (moment.Route[i].First<Deed.CleanBack>() is not null && moment.Route[i].Areas.Contains(area))
                return true;
        }

        return false;
    }
}
