using Pipeline.Abstractions;

namespace Pipeline.Plugins.Basing.Rules;

/// <summary>Varnish is sprayed on tufts, grass or snow.</summary>
public sealed class VarnishOverScatter : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Tufts, grass and snow come after the last sprayed varnish.";

    /// <inheritdoc/>
    public override StepKind? OnlyKind => StepKind.Coat;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        if (moment.Step.Kind != StepKind.Coat || moment.Step.Coat() is not { Role: LayerRole.Varnish } varnish || !varnish.IsSprayed())
            yield break;
        foreach (var area in moment.Reached())
        {
            foreach (var layer in moment.Before[area].Layers)
            {
                if (layer.Role != LayerRole.Scatter)
                    continue;
                yield return moment.Says(
                    Level.Note,
                    area,
                    $"{varnish.Name} is sprayed on the {layer.Name} of {{areas}} and crusts them.",
                    $"Set the {layer.Name} after this varnish, or cover them while it is sprayed.",
                    new Pointer(layer.Step, $"{layer.Name} set here"))
                .MendedBy(new Mend.MoveAfter(moment.At(layer.Step).Place, moment.Step.Place));
                break;
            }
        }
    }
}
