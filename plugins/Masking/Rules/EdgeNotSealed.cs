using Pipeline.Abstractions;

namespace Pipeline.Plugins.Masking.Rules;

/// <summary>Paint that creeps under a mask over texture.</summary>
public sealed class EdgeNotSealed : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A hard edge over texture is sealed before the colour goes on.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> JudgeRoute(WalkedSteps route)
    {
        foreach (var moment in route.Moments)
        {
            if (moment.Step.Kind != StepKind.Masking || moment.Step.First<Deed.PutMaskOn>() is not { Material.Kind: MaskKind.Tape or MaskKind.Film } on)
                continue;
            foreach (var area in moment.Step.Areas)
            {
                if (!moment.Before[area].Has(LayerRole.Texture) || FirstCoatBeside(route, moment, area, on.Mask) is not { } first)
                    continue;
                if (first.IsClear || first.Role == LayerRole.Varnish || first.Name == moment.Before[area].Ground()?.Name)
                    continue;
                yield return moment.Says(
                    Level.Note, area, $"{first.Name} will creep under '{on.Mask}' over the texture of {{areas}}.",
                    "Mist the colour that is there, or clear, along the edge first; then the new colour.");
            }
        }
    }

    // a brush can be led away from the edge
    private static Layer? FirstCoatBeside(WalkedSteps route, Moment masking, string area, string mask)
    {
        for (var i = masking.Step.Index + 1; i < route.Moments.Count; i++)
        {
            var step = route.Moments[i].Step;
            if (step.First<Deed.TakeMaskOff>()?.Mask == mask)
                return null;
            if (step.Coat() is { } coat && coat.IsSprayed() && masking.Pieces.IsBeside(area, step.Areas, i))
                return coat;
        }

        return null;
    }
}
