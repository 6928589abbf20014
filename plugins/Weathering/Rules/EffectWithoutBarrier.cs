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
        var rubbed = moment.Step.First<Deed.CleanBack>() is { Dissolves: Carrier.Spirit } back ? back : null;
        if (coat is { IsWetInWet: true } || (rubbed is null && coat?.IsSpirit() != true))
            yield break;
        foreach (var area in moment.Reached())
        {
            var surface = moment.Before[area];
            // what is cleaned back was judged when it was laid
            if (rubbed is not null && surface.Top?.IsSpiritEffect() == true)
                continue;
            if (surface.TopCoat() is not { } top || !(coat is null ? IsDissolved(moment, rubbed!, top) : IsDissolved(moment, coat, top)))
                continue;
            yield return moment.Says(
                top.IsAlcohol() || coat is { Role: not LayerRole.Effect } ? Level.Warning : Level.Error,
                area,
                $"The thinner of {rubbed?.With ?? coat!.Name} dissolves {top.Name} on {{areas}}: no varnish lies between them.",
                "Varnish {areas} first and let the varnish get wash-safe.",
                new Pointer(top.Step, $"{top.Name} was laid here"))
                .MendedBy(moment.VarnishFirst(surface.Top, Sheen.Satin));
        }
    }

    /// <summary>True if nothing parts a coat from what its thinner dissolves: the varnish that is missing is this rule's to ask for.</summary>
    internal static bool IsFor(Moment moment, Layer coat, Surface surface) =>
        coat is { IsWetInWet: false } && coat.IsSpirit() && surface.TopCoat() is { } top && IsDissolved(moment, coat, top);

    private static bool IsDissolved(Moment moment, Layer coat, Layer top) =>
        moment.Pair(coat, top) is { WhenCured: Bearing.Barrier } pair && (coat.IsSpiritEffect() || pair.WhenDry != Bearing.Never);

    // metal flakes move even where their binder only softens
    private static bool IsDissolved(Moment moment, Deed.CleanBack back, Layer top) =>
        top.IsAlcohol() || (top.IsSpirit() && (back.Liquid is not { } liquid || moment.Tables.Rewetting(liquid, top.Family!) is not { WhenDry: < Bite.Lifts }));
}
