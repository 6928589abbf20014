using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>A joint of metal or resin that bears weight has no pin.</summary>
public sealed class JointNeedsPin : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A joint of metal or resin that bears weight or sticks out is pinned.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.First<Deed.Join>() is not null || step.First<Deed.Prepare>() is { What: Preparation.Glued };

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        foreach (var deed in moment.Step.Deeds)
        {
            var parts = deed switch
            {
                Deed.Join { IsLoaded: true, IsPinned: false, Glue: not null } join => join.Parts,
                Deed.Prepare { What: Preparation.Glued, IsLoaded: true, IsPinned: false } => PartsOf(moment),
                _ => [],
            };
            if (parts.IsEmpty || IsPinned(moment, deed, parts) || Cast(moment.Model, parts) is not { } material)
                continue;
            yield return moment.Says(
                Level.Note,
                moment.Step.Areas,
                $"The joint of {parts.Spoken()} bears weight, and glue alone on {material.Name} snaps.",
                "Pin it with 0.5–1 mm wire: add 'pin' before this step, or say 'pinned: yes'.")
                .MendedBy(moment.PutFirst("pin"));
        }
    }

    private static Sequence<string> PartsOf(Moment moment)
    {
        var parts = new List<string>();
        foreach (var area in moment.Step.Areas)
        {
            if (moment.Model.PartOf(area) is var part && !parts.Contains(part))
                parts.Add(part);
        }

        return parts.ToSequence();
    }

    private static bool IsPinned(Moment moment, Deed deed, Sequence<string> parts)
    {
        foreach (var area in moment.Model.Areas)
        {
            var isConcerned = deed is Deed.Join ? parts.Contains(area.Part) : moment.Step.Areas.Contains(area.Name);
            if (isConcerned && moment.Before[area.Name].Has(Preparation.Pinned))
                return true;
        }

        return false;
    }

    // cast or printed; welded plastic and board do not need it
    private static Material? Cast(Model model, Sequence<string> parts)
    {
        foreach (var area in model.Areas)
        {
            if (parts.Contains(area.Part) && model.MaterialOf(area) is { NeedsWashing: true, IsPorous: false } material)
                return material;
        }

        return null;
    }
}
