using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>Colour on the bare piece.</summary>
public sealed class NoUndercoat : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Colour goes on an undercoat, not on the bare piece.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        if (moment.Step.Kind != StepKind.Coat || moment.Step.Coat() is not { } coat)
            yield break;
        if (coat.Role is not (LayerRole.Colour or LayerRole.Effect))
            yield break;
        foreach (var area in moment.Reached())
        {
            var surface = moment.Before[area];
            if (surface.Material.BareColour is not { } level || surface.Top is not null)
                continue;
            yield return moment.Says(
                level,
                area,
                $"{coat.Name} goes straight on bare {surface.Material.Name}: without key it rubs off the edges of {{areas}}.",
                "Lay an undercoat first.");
        }
    }
}
