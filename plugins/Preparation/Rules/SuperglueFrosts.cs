using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>Superglue beside gloss, clear or dark finishes in still air.</summary>
public sealed class SuperglueFrosts : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Superglue stays away from gloss, clear and dark finishes unless air moves.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.First<Deed.Join>() is { Glue: Glue.Superglue } || step.First<Deed.Prepare>() is { Glue: Glue.Superglue };

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        foreach (var deed in moment.Step.Deeds)
        {
            var parts = deed switch
            {
                Deed.Join { Glue: Glue.Superglue, HasAirflow: false } join => join.Parts,
                // glued on paint is another rule's
                Deed.Prepare { Glue: Glue.Superglue, HasAirflow: false, Faces: JointFaces.Bare } => moment.Model.Parts,
                _ => [],
            };
            if (parts.IsEmpty)
                continue;
            foreach (var area in moment.Model.Areas)
            {
                if (!parts.Contains(area.Part) || moment.Before[area.Name] is not { IsMasked: false, IsHidden: false } surface || Finish(surface) is not { } finish)
                    continue;
                yield return moment.Says(
                    Level.Warning,
                    area.Name,
                    $"For a day superglue gives off vapour, which settles as white frost; on {{areas}} there is {finish}.",
                    "Take epoxy or PVA; or let air move over the joint ('airflow: yes') and take a low-odour superglue.");
            }
        }
    }

    private static string? Finish(Surface surface)
    {
        if (surface.Top is not { Role: not (LayerRole.Sealer or LayerRole.Undercoat) } top)
            return null;
        return surface.Sheen >= Sheen.Gloss ? "a gloss finish"
            : top.Technique == Technique.ClearColour ? "clear colour"
            : surface.ShownColour()?.Paint.IsDark() == true ? "a dark finish"
            : null;
    }
}
