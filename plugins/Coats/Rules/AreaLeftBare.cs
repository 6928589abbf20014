using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>An area that the file declares and no coat ever reaches.</summary>
public sealed class AreaLeftBare : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Every area of an undercoated piece gets a coat, or is left bare on purpose.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> JudgeRoute(WalkedSteps route)
    {
        Moment? undercoat = null;
        var kept = new HashSet<string>(StringComparer.Ordinal);
        foreach (var moment in route.Moments)
        {
            if (moment.Step.Coat() is { Role: LayerRole.Undercoat } && (undercoat is null || undercoat.Step.Place.CompareTo(moment.Step.Place) > 0))
                undercoat = moment;
            // whoever masks an area has not forgotten it: a clear canopy, a bearing, a peg
            foreach (var mask in moment.Step.Deeds.OfType<Deed.PutMaskOn>())
                kept.UnionWith(moment.Step.Areas);
        }

        if (undercoat is null)
            yield break;
        foreach (var (area, surface) in route.AtTheEnd())
        {
            if (!surface.Layers.IsEmpty || surface.IsHidden || kept.Contains(area) || WasCoated(route, area))
                continue;
            yield return undercoat.Says(
                Level.Note,
                area,
                "No step lays anything on {areas}: it stays bare to the end.",
                "Name {areas} in the steps that should reach it; if it is meant to stay bare, say so with 'allow: { area-left-bare: … }' at the model.");
        }
    }

    // coated and stripped again is no slip of the pen
    private static bool WasCoated(WalkedSteps route, string area) => route.Moments.Any(moment => !moment.After[area].Layers.IsEmpty);
}
