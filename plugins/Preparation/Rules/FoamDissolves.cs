using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>Strong solvent, propellant or superglue on bare expanded foam.</summary>
public sealed class FoamDissolves : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Nothing hot touches bare expanded foam.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        foreach (var deed in moment.Step.Deeds)
        {
            var attacker = deed switch
            {
                Deed.Lay { Layer: var coat } when coat.IsHot() || (coat.Method == Method.Aerosol && !coat.IsWaterborne()) => coat.Name,
                Deed.Lay { Layer: { Method: Method.Aerosol } can } => $"the propellant of {can.Name}",
                Deed.Prepare { Glue: Glue.Superglue } or Deed.Join { Glue: Glue.Superglue } => "superglue",
                _ => null,
            };
            if (attacker is null)
                continue;
            foreach (var area in deed is Deed.Lay ? moment.Step.Areas.Concat(moment.Overspray) : moment.Step.Areas)
            {
                var surface = moment.Before[area];
                if (!surface.Material.DissolvesInSolvent || surface.Top is not null || surface.IsMasked)
                    continue;
                yield return moment.Says(
                    Level.Error,
                    area,
                    $"{char.ToUpperInvariant(attacker[0])}{attacker[1..]} dissolves the bare {surface.Material.Name} of {{areas}}.",
                    "Seal it first with a waterborne coat by brush; glue it with PVA or a foam-safe glue.");
            }
        }
    }
}
