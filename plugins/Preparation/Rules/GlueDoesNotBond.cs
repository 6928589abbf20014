using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>A glue that does not hold what it is put on.</summary>
public sealed class GlueDoesNotBond : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "The glue suits what the parts are made of.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.First<Deed.Join>() is not null || step.First<Deed.Prepare>() is { What: Preparation.Glued };

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        foreach (var deed in moment.Step.Deeds)
        {
            var glue = deed switch { Deed.Join join => join.Glue, Deed.Prepare { What: Preparation.Glued } prepare => prepare.Glue, _ => null };
            if (glue is not (Glue.StyreneCement or Glue.Pva))
                continue;
            var materials = Materials(moment, deed);
            if (glue == Glue.StyreneCement && materials.Find(DoesNotWeld) is { } other)
            {
                yield return moment.Says(
                    Level.Error,
                    moment.Step.Areas,
                    $"Styrene cement welds styrene and does nothing for {other.Name}.",
                    other.IsPorous ? "Take PVA or epoxy." : "Take superglue or epoxy.");
            }
            else if (glue == Glue.Pva && materials.Count > 0 && !materials.Exists(material => material.IsPorous))
            {
                yield return moment.Says(
                    Level.Warning,
                    moment.Step.Areas,
                    $"PVA dries through a porous face, and {string.Join(" and ", materials.Select(material => material.Name).Distinct())} has none: the joint stays weak.",
                    "Take superglue or epoxy.");
            }
        }
    }

    // cast, printed or porous: no solvent cement melts it together
    private static bool DoesNotWeld(Material material) => material.NeedsWashing || material.IsPorous;

    private static List<Material> Materials(Moment moment, Deed deed)
    {
        var materials = new List<Material>();
        foreach (var area in moment.Model.Areas)
        {
            var isGlued = deed is Deed.Join join ? join.Parts.Contains(area.Part) : moment.Step.Areas.Contains(area.Name);
            if (isGlued && moment.Model.MaterialOf(area) is var material && !materials.Contains(material))
                materials.Add(material);
        }

        return materials;
    }
}
