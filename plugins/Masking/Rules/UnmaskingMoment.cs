using Pipeline.Abstractions;

namespace Pipeline.Plugins.Masking.Rules;

/// <summary>A mask is pulled while the coat beside it is wet, or after a thick one has gone hard.</summary>
public sealed class UnmaskingMoment : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A mask is pulled when the coat over its edge is touch-dry, and before a thick one is hard.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.Kind == StepKind.Removal;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        foreach (var deed in moment.Step.Deeds)
        {
            if (deed is not Deed.TakeMaskOff off || Find(moment, off.Mask) is not var (area, mask))
                continue;
            var coats = 0;
            Layer? last = null;
            for (var i = mask.Step + 1; i < moment.Step.Index; i++)
            {
                if (!RunsOverTheEdge(moment, i, area))
                    continue;
                last = (moment.At(i).Coat() ?? last)! with { Step = i };
                coats += last.Coats;
            }

            if (last is null)
                continue;
            if (moment.WaitsFor(last, DryingState.TouchDry, area, $"Pulled sooner, {last.Name} strings along the edge of '{off.Mask}'.", "Wait until it is touch-dry.") is { } wet)
                yield return wet;
            if (coats >= moment.Tables.Figure(RuleFigures.ThickEdge).Value && last.TimeTo(DryingState.MaskSafe) is { } hard)
            {
                yield return moment.WaitsSince(
                    last, hard, $"'{off.Mask}' off", area, $"{coats} coats that have gone hard chip along the edge of '{off.Mask}'.",
                    "Pull it when the last coat is touch-dry; if it is too late, score along the edge and pull low.") with
                {
                    Span = new Span.AtMost(hard.High),
                    Gravest = Level.Warning,
                };
            }
        }
    }

    private static (string Area, MaskOn Mask)? Find(Moment moment, string name)
    {
        foreach (var area in moment.Before.Areas)
        {
            foreach (var mask in moment.Before[area].Masks)
            {
                if (mask.Name == name)
                    return (area, mask);
            }
        }

        return null;
    }

    // sprayed anywhere on the piece, or brushed on the masked area itself
    private static bool RunsOverTheEdge(Moment moment, int step, string area)
    {
        var candidate = moment.At(step);
        if (candidate.Coat() is not { Role: not (LayerRole.Decal or LayerRole.Powder) } coat)
            return false;
        return candidate.Areas.Contains(area) || (coat.IsSprayed() && moment.Pieces.IsBeside(area, candidate.Areas, step));
    }
}
