using Pipeline.Abstractions;

namespace Pipeline.Plugins.Safety.Rules;

/// <summary>Solvent is sprayed where the file says there is no extraction, or near a flame; isocyanate without breathing air from a hose.</summary>
public sealed class SprayWithoutExtraction : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Solvent is sprayed with extraction and away from flames; isocyanate only with air-fed protection.";

    /// <inheritdoc/>
    public override IEnumerable<BatchVerdict> JudgeBatch(BatchView batch) => batch.OncePerCause(moment =>
    {
        if (moment.Step.Kind != StepKind.Coat || moment.Step.Coat() is not { Family: { } family } coat || !coat.IsSprayed())
            return null;
        var protection = moment.Protection;
        // two-part hardener is said on purpose, so what protects from it has to be said too
        if (family.HasIsocyanate && protection.AirFed != true)
        {
            return new Cause(
                "isocyanate",
                Level.Error,
                $"{coat.Name} holds isocyanate and is sprayed without breathing air from a hose: it can cause asthma for life.",
                "Leave it to trained people with air-fed protection ('air-fed: yes'), or take another varnish. Safety data sheet first.");
        }

        var isFlammable = family.Carrier is Carrier.Solvent or Carrier.Spirit or Carrier.Alcohol || coat.Method == Method.Aerosol;
        if (!isFlammable)
            return null;
        if (protection.Flame == true)
        {
            return new Cause(
                "flame",
                Level.Error,
                $"{coat.Name} is sprayed near a flame or heater: its vapour and mist catch fire.",
                "Put every flame, heater and cigarette out first and let the room air. Check label and safety data sheet.");
        }

        return protection.Extraction == false
            ? new Cause(
                "extraction",
                Level.Error,
                $"{coat.Name} carries solvent and is sprayed without extraction: the vapour harms and can catch fire.",
                "Spray with extraction to the outside, or take a waterborne paint or a brush. Check label and safety data sheet.")
            : null;
    });
}
