using Pipeline.Abstractions;

namespace Pipeline.Plugins.Basing.Rules;

/// <summary>Loose pigment is varnished, painted over wet, or left on a piece that is handled.</summary>
public sealed class PowderVarnished : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Loose pigment comes last, or a fixer holds it.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.Coat() is { } coat && (coat.Role == LayerRole.Varnish || IsWetBrush(coat));

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        var coat = moment.Step.Coat()!;
        foreach (var area in moment.Reached())
        {
            if (moment.Before[area].Top is not { Role: LayerRole.Powder, Family: null } powder)
                continue;
            yield return moment.Says(
                Level.Warning,
                area,
                $"{coat.Name} goes over the loose {powder.Name} on {{areas}}: the powder vanishes or darkens.",
                "Dust the pigment on last; or lay more than you want to see and hold it with a fixer ('fix: spirit').",
                new Pointer(powder.Step, $"{powder.Name} was dusted on here"))
                .MendedBy(new Mend.MoveAfter(moment.At(powder.Step).Place, moment.Step.Place));
        }
    }

    /// <inheritdoc/>
    public override IEnumerable<Verdict> JudgeRoute(WalkedSteps route)
    {
        if (!route.Model.IsHandled)
            yield break;
        foreach (var (area, surface) in route.AtTheEnd())
        {
            if (surface is not { IsHidden: false, Top: { Role: LayerRole.Powder, Family: null } powder })
                continue;
            yield return route.Moments[powder.Step].Says(
                Level.Warning,
                area,
                $"The loose {powder.Name} on {{areas}} rubs off: {route.Model.Name} is handled in play.",
                "Hold it with a fixer ('fix: spirit' or 'fix: acrylic-resin'), or keep it to what no hand touches.");
        }
    }

    private static bool IsWetBrush(Layer coat) =>
        coat.Method == Method.Brush
        && coat.Technique != Technique.DryBrush
        && coat.Role is LayerRole.Colour or LayerRole.Effect or LayerRole.Undercoat or LayerRole.Sealer;
}
