using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>Colour on the bare piece.</summary>
public sealed class NoUndercoat : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "Colour goes on an undercoat, not on the bare piece.";

    /// <inheritdoc/>
    protected override bool LooksAt(Layer coat) => coat.Role is LayerRole.Colour or LayerRole.Effect;

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        if (surface.Material.BareColour is not { } level || surface.Top is not null)
            return null;
        return moment.Says(
            level,
            area,
            $"{coat.Name} goes straight on bare {surface.Material.Name}: without key it rubs off the edges of {{areas}}.",
            "Lay an undercoat first.")
            .MendedBy(Undercoat(moment, coat));
    }

    // the undercoat that stands further down comes up; else one from the shelf that goes with the coat
    private static Mend? Undercoat(Moment moment, Layer coat)
    {
        for (var i = moment.Step.Index + 1; i < moment.Route.Count; i++)
        {
            if (moment.At(i).Coat()?.Role == LayerRole.Undercoat && moment.Step.Areas.All(area => moment.At(i).Areas.Contains(area)))
                return new Mend.MoveBefore(moment.At(i).Place, moment.Step.Place);
        }

        Paint? best = null;
        foreach (var paint in moment.Shelf)
        {
            if (paint.Name.Contains("undercoat", StringComparison.OrdinalIgnoreCase) && (best is null || (paint.Family == coat.Family && best.Family != coat.Family)))
                best = paint;
        }

        return best is null ? null : moment.PutFirst("undercoat", new("with", best.Name), new("by", "brush"));
    }
}
