using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>Paint on a material that carries release agent or grease, and no wash before it.</summary>
public sealed class PaintOnUnwashed : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Resin and cast metal are washed before the first coat.";

    /// <inheritdoc/>
    public override StepKind? OnlyKind => StepKind.Coat;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        if (moment.Step.Kind != StepKind.Coat || moment.Step.Coat() is not { } coat)
            yield break;
        foreach (var area in moment.Reached())
        {
            var surface = moment.Before[area];
            if (!surface.Material.NeedsWashing || surface.Top is not null || surface.Has(Preparation.Washed) || surface.Has(Preparation.Stripped))
                continue;
            yield return moment.Says(
                Level.Error,
                area,
                $"{coat.Name} goes on {surface.Material.Name} that was never washed: release agent on {{areas}} lets it peel.",
                "Add 'clean: all' at the start of the route and let it dry.")
                .MendedBy(moment.PutAtStart("clean"));
        }
    }
}
