using Pipeline.Abstractions;

namespace Pipeline.Plugins.Safety.Rules;

/// <summary>A flammable liquid in an ultrasonic tank.</summary>
public sealed class FlammableInBath : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Only water-based liquids go into an ultrasonic tank.";

    /// <inheritdoc/>
    public override string Source => "published in the manual of an ultrasonic cleaner: flammables never in the tank";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.First<Deed.Prepare>() is { IsUltrasonic: true } || step.First<Deed.Strip>() is { IsUltrasonic: true };

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        foreach (var deed in moment.Step.Deeds)
        {
            var liquid = deed switch
            {
                Deed.Prepare { IsUltrasonic: true, Liquid: { } washed } when washed.IsFlammable() => washed.Spoken(),
                Deed.Strip { IsUltrasonic: true, Dissolves: Carrier.Alcohol or Carrier.Spirit or Carrier.Solvent } strip => strip.With,
                _ => null,
            };
            if (liquid is null)
                continue;
            yield return moment.Says(
                Level.Error,
                moment.Step.Areas,
                $"{char.ToUpperInvariant(liquid[0])}{liquid[1..]} in an ultrasonic tank is a fire and explosion risk: ultrasound makes mist that catches fire.",
                "Take a water-based liquid in the tank, or soak without ultrasound, covered and aired. Check label and safety data sheet.");
        }
    }
}
