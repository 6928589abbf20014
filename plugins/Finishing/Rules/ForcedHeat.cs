using Pipeline.Abstractions;

namespace Pipeline.Plugins.Finishing.Rules;

/// <summary>Heat that warps the piece or skins its paint.</summary>
public sealed class ForcedHeat : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Drying is not forced with more heat than the piece and its paint bear.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.First<Deed.Await>() is { Heat: not null } || step.First<Deed.Rest>() is { Heat: not null };

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        foreach (var deed in moment.Step.Deeds)
        {
            var heat = deed switch { Deed.Await waits => waits.Heat, Deed.Rest rests => rests.Heat, _ => null };
            if (heat is not { } degrees)
                continue;
            foreach (var area in moment.Step.Areas)
            {
                var surface = moment.Before[area];
                if (surface.Material.WarpsAbove is { } limit && degrees.CompareTo(limit) > 0)
                    yield return moment.Says(Level.Warning, area, $"{degrees} warps {surface.Material.Name}.", $"Stay below {limit}; cool air and time do it too.");
                else if (surface.Top is { Family: not null } top && Concerns.IsEnamel(top))
                    yield return moment.Says(Level.Warning, area, $"Heat on fresh {top.Name} skins it over while it is wet inside.", "Give enamel cool air and time.", new Pointer(top.Step, $"{top.Name} was laid here"));
            }
        }
    }
}
