using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>Alcohol on paint that it dissolves.</summary>
public sealed class AlcoholOnSoluble : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Alcohol stays off water-based paint that nothing seals.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.Coat() is { } coat ? coat.IsAlcohol() && !coat.IsDabbed() : RubbedOn(step) is not null;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        var coat = moment.Step.Coat();
        var rubbed = coat is null ? RubbedOn(moment.Step) : null;
        foreach (var area in moment.Reached())
        {
            if (Attacked(moment.Before[area], isRubbed: coat is null) is not { } top || !top.IsWaterborne())
                continue;
            if (coat is null ? !IsTakenOff(moment, rubbed!.Value, top) : moment.Pair(coat, top) is { WhenDry: Bearing.Fine, WhenCured: Bearing.Fine })
                continue;
            var attacker = coat?.Name ?? rubbed!.Value.Spoken();
            var pointer = new Pointer(top.Step, $"{top.Name} was laid here");
            if (coat is null || coat.Body == Body.Heavy)
            {
                yield return moment.Says(Level.Error, area, $"The alcohol in {attacker} strips {top.Name} off {{areas}}.", "Take a milder liquid, or seal it with a lacquer varnish first.", pointer);
                continue;
            }

            var isWet = coat.IsWet();
            if (isWet)
                yield return moment.Says(Level.Warning, area, $"The alcohol in {attacker} can lift {top.Name} on {{areas}}.", "Mist it on ('body: mist'), or seal with a lacquer varnish first.", pointer);
            // what it must not meet before it has cured, it lifts for sure when laid wet
            var isNever = moment.Pair(coat, top) is { WhenDry: Bearing.Never };
            if ((!isWet || isNever) && moment.WaitsFor(top, DryingState.Cured, area, $"The alcohol in {attacker} softens {top.Name} until that has cured.", "Wait, or seal it first.") is { } wait)
                yield return wait with { Gravest = isWet ? Level.Error : Level.Warning };
        }
    }

    // an effect that is rubbed back is meant to come off; what lies under it is not
    private static Layer? Attacked(Surface surface, bool isRubbed)
    {
        if (!isRubbed)
            return surface.TopCoat();
        for (var i = surface.Layers.Count - 1; i >= 0; i--)
        {
            if (surface.Layers[i].Role != LayerRole.Effect)
                return surface.Layers[i];
        }

        return null;
    }

    private static bool IsTakenOff(Moment moment, Liquid liquid, Layer top) =>
        moment.Tables.Rewetting(liquid, top.Family!) is not { WhenDry: < Bite.Lifts, WhenCured: < Bite.Lifts };

    private static Liquid? RubbedOn(Step step)
    {
        foreach (var deed in step.Deeds)
        {
            var liquid = deed switch { Deed.CleanBack back => back.Liquid, Deed.Prepare { What: Preparation.Washed } wash => wash.Liquid, _ => null };
            if (liquid?.Carrier() == Carrier.Alcohol)
                return liquid;
        }

        return null;
    }
}
