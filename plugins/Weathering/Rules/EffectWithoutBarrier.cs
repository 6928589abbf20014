using Pipeline.Abstractions;

namespace Pipeline.Plugins.Weathering.Rules;

/// <summary>An effect whose thinner dissolves the coat under it.</summary>
public sealed class EffectWithoutBarrier : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Enamel and oil effects have a varnish between them and enamel, oil or bare alcohol metal.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        var coat = moment.Step.Coat();
        var rubbed = moment.Step.First<Deed.CleanBack>() is { Dissolves: Carrier.Spirit } back ? back.With : null;
        if (coat is { IsWetInWet: true } || (rubbed is null && coat?.IsSpirit() != true))
            yield break;
        foreach (var area in moment.Reached())
        {
            var surface = moment.Before[area];
            // what is cleaned back was judged when it was laid
            if (rubbed is not null && surface.Top?.IsSpiritEffect() == true)
                continue;
            if (surface.TopCoat() is not { } top || !IsDissolved(top, coat))
                continue;
            yield return moment.Says(
                top.IsAlcohol() || coat is { Role: not LayerRole.Effect } ? Level.Warning : Level.Error,
                area,
                $"The thinner of {rubbed ?? coat!.Name} dissolves {top.Name} on {{areas}}: no varnish lies between them.",
                "Varnish {areas} first and let the varnish get wash-safe.",
                new Pointer(top.Step, $"{top.Name} was laid here"))
                .MendedBy(moment.VarnishFirst(surface.Top, Sheen.Satin));
        }
    }

    // by an effect or by rubbing any enamel or oil; by a whole coat of oil the enamel under it
    private static bool IsDissolved(Layer top, Layer? coat) =>
        top.IsAlcohol() || (top.IsSpirit() && (coat is null || coat.IsSpiritEffect() || (Concerns.IsEnamel(top) && !Concerns.IsEnamel(coat))));
}
