using Pipeline.Abstractions;

namespace Pipeline.Plugins.Varnish.Rules;

/// <summary>Matt varnish over metal or clear colour.</summary>
public sealed class MattOverMetal : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Metal and clear colour that shine are not varnished matt.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> JudgeRoute(WalkedSteps route)
    {
        foreach (var moment in route.Moments)
        {
            if (moment.Step.Coat() is not { Role: LayerRole.Varnish, Sheen: Sheen.Matt } varnish)
                continue;
            foreach (var area in moment.Reached())
            {
                if (moment.Model.AreaNamed(area)?.Shines == false || moment.Before[area].ShiningMetal() is not { } metal || IsGlossedBack(route, moment.Step.Index, area))
                    continue;
                yield return moment.Says(
                    Level.Warning,
                    area,
                    $"{varnish.Name} kills the shine of {metal.Name} on {{areas}}.",
                    "Mask {areas}, varnish it by itself, or bring the gloss back with a last coat.",
                    new Pointer(metal.Step, $"{metal.Name} was laid here"));
            }
        }
    }

    private static bool IsGlossedBack(WalkedSteps route, int step, string area)
    {
        for (var i = step + 1; i < route.Moments.Count; i++)
        {
            if (route.Moments[i].Step.Coat() is { } later && later.Role is LayerRole.Varnish or LayerRole.Colour
                && later.Sheen >= Sheen.Gloss && route.Moments[i].Reached().Contains(area))
                return true;
        }

        return false;
    }
}
