using Pipeline.Abstractions;

namespace Pipeline.Plugins.Weathering.Rules;

/// <summary>An enamel or oil effect on a coat that cannot bear its thinner yet.</summary>
public sealed class EffectTooSoon : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "A coat is old enough for thinner and rubbing before an enamel or oil effect goes on it.";

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        return surface.Top is { } top && moment.ConcernOf(coat, top) == Concern.ThinnerOnYoung
            && (top.Technique != Technique.ChippingMedium || coat.Role == LayerRole.Effect)
            ? moment.WaitsFor(top, moment.Pair(coat, top)!.From, area, $"{top.Name} is too young for the thinner of {coat.Name} and for rubbing.", "Wait, or lay a barrier varnish.")
            : null;
    }
}
