using Pipeline.Abstractions;

namespace Pipeline.Plugins.Weathering.Rules;

/// <summary>A coat over a chipping medium that water cannot soften: the wrong paint, or too old.</summary>
public sealed class WillNotChip : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Over a chipping medium goes waterborne paint, and it is chipped within hours.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.Coat() is { } coat ? Closes(coat) : step.First<Deed.CleanBack>() is { Of: Technique.ChippingMedium };

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        if (moment.Step.Coat() is not { } coat)
            return Activated(moment);
        foreach (var area in moment.Step.Areas)
        {
            if (MediumUnder(moment.Before[area].Layers) >= 0)
                return OverMedium(moment, coat);
        }

        return [];
    }

    private static bool Closes(Layer layer) => (layer.IsHot() || layer.IsSpirit()) && layer.Role != LayerRole.Effect;

    private static IEnumerable<Verdict> OverMedium(Moment moment, Layer coat)
    {
        foreach (var area in moment.Reached())
        {
            var layers = moment.Before[area].Layers;
            var medium = MediumUnder(layers);
            // what goes over a coat that is never chipped, or has been chipped, is an ordinary coat
            if (medium < 0 || IsChipped(moment, area, layers[medium].Step, moment.Step.Index))
                continue;
            var isFirst = medium == layers.Count - 1;
            if (!isFirst && (!IsChipped(moment, area, moment.Step.Index, moment.Route.Count) || HasSealedAlready(layers, medium)))
                continue;
            yield return moment.Says(
                Level.Error,
                area,
                $"{coat.Name} closes the chipping medium on {{areas}}: water does not get through it, so nothing chips.",
                "Lay waterborne paint over the medium, chip it, and only then go on.",
                new Pointer(layers[medium].Step, "the chipping medium was laid here"));
        }
    }

    private static IEnumerable<Verdict> Activated(Moment moment)
    {
        foreach (var area in moment.Step.Areas)
        {
            var layers = moment.Before[area].Layers;
            var medium = MediumUnder(layers);
            if (medium < 0 || medium == layers.Count - 1)
                continue;
            var topcoat = layers[medium + 1];
            var workable = new Drying(moment.Tables.Figure(RuleFigures.Chips).Value);
            yield return moment.WaitsSince(
                topcoat, default, "chipped", area, $"{topcoat.Name} over the chipping medium has hardened and no longer lets water through: it will not chip.",
                "Chip it within hours of laying it, the same evening at best.") with
            {
                Span = new Span.AtMost(workable, workable),
            };
        }
    }

    private static int MediumUnder(Sequence<Layer> layers)
    {
        for (var i = layers.Count - 1; i >= 0; i--)
        {
            if (layers[i].Technique == Technique.ChippingMedium)
                return i;
        }

        return -1;
    }

    private static bool HasSealedAlready(Sequence<Layer> layers, int medium)
    {
        for (var i = medium + 1; i < layers.Count; i++)
        {
            if (Closes(layers[i]))
                return true;
        }

        return false;
    }

    private static bool IsChipped(Moment moment, string area, int after, int before)
    {
        for (var i = after + 1; i < before; i++)
        {
            if (moment.At(i).First<Deed.CleanBack>() is { Of: Technique.ChippingMedium } && moment.At(i).Areas.Contains(area))
                return true;
        }

        return false;
    }
}
