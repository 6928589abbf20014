using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>Strong solvent, propellant or superglue on bare expanded foam.</summary>
public sealed class FoamDissolves : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Nothing hot touches bare expanded foam.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step)
    {
        foreach (var deed in step.Deeds)
        {
            if (Attacks(deed))
                return true;
        }

        return false;
    }

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        foreach (var area in moment.Model.Areas)
        {
            if (moment.Model.MaterialOf(area).DissolvesInSolvent)
                return Attacked(moment);
        }

        return [];
    }

    private static bool Attacks(Deed deed) => deed switch
    {
        Deed.Lay { Layer: var coat } => coat.IsHot() || coat.Method == Method.Aerosol,
        Deed.Prepare { Glue: Glue.Superglue } or Deed.Join { Glue: Glue.Superglue } => true,
        _ => false,
    };

    private static string Attacker(Deed deed) => deed switch
    {
        Deed.Lay { Layer: var coat } => coat.IsHot() || !coat.IsWaterborne() ? coat.Name : $"the propellant of {coat.Name}",
        _ => "superglue",
    };

    private static IEnumerable<Verdict> Attacked(Moment moment)
    {
        foreach (var deed in moment.Step.Deeds)
        {
            if (!Attacks(deed))
                continue;
            var attacker = Attacker(deed);
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
