using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing.Rules;

/// <summary>Colour on porous material that was never sealed.</summary>
public sealed class ThirstyGround : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "Board, plaster and cork are sealed before colour, wash or decal.";

    /// <inheritdoc/>
    protected override bool LooksAt(Layer coat) => coat.Role is LayerRole.Colour or LayerRole.Effect or LayerRole.Decal;

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        // foam does not drink; what dissolves it is another rule's
        if (!surface.Material.IsPorous || surface.Material.DissolvesInSolvent || IsClosed(surface))
            return null;
        return moment.Says(
            Level.Warning,
            area,
            $"{surface.Material.Name} under {{areas}} was never sealed: it drinks {coat.Name} unevenly and swells at the edges.",
            "Seal {areas} with two coats, sanded between, before the undercoat.")
            .MendedBy(Seal(moment, area));
    }

    // before whatever lies on it already
    private static Mend? Seal(Moment moment, string area)
    {
        if (moment.OnlyPaintCalled("sealer") is not { } sealer)
            return null;
        var layers = moment.Before[area].Layers;
        var first = layers.IsEmpty ? moment.Step : moment.At(layers[0].Step);
        return new Mend.PutBefore(
            first.Place,
            new NewStep("seal", new Acting.TheAreas(), [new("with", sealer.Name), new("by", "brush"), new("coats", Mends.Written(2))]));
    }

    // closed by a sealer, a varnish or a bed of paste; colour already on it means that the rule has spoken there
    private static bool IsClosed(Surface surface)
    {
        foreach (var layer in surface.Layers)
        {
            if (layer.Role is LayerRole.Sealer or LayerRole.Varnish or LayerRole.Texture or LayerRole.Colour or LayerRole.Effect or LayerRole.Decal)
                return true;
        }

        return false;
    }
}
