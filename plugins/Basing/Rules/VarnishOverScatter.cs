using Pipeline.Abstractions;

namespace Pipeline.Plugins.Basing.Rules;

/// <summary>Varnish is sprayed on tufts, grass or snow.</summary>
public sealed class VarnishOverScatter : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "Tufts, grass and snow come after the last sprayed varnish.";

    /// <inheritdoc/>
    protected override bool LooksAt(Layer coat) => coat.Role == LayerRole.Varnish && coat.IsSprayed();

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        foreach (var layer in surface.Layers)
        {
            if (layer.Role == LayerRole.Scatter)
            {
                return moment.Says(
                    Level.Note,
                    area,
                    $"{coat.Name} is sprayed on the {layer.Name} of {{areas}} and crusts it.",
                    $"Set the {layer.Name} after this varnish, or cover them while it is sprayed.",
                    new Pointer(layer.Step, $"{layer.Name} set here"))
                    .MendedBy(new Mend.MoveAfter(moment.At(layer.Step).Place, moment.Step.Place));
            }
        }

        return null;
    }
}
