using Pipeline.Abstractions;

namespace Pipeline.Plugins.Basing.Rules;

/// <summary>Paint over paste or glued sand that is still wet inside.</summary>
public sealed class TextureTooSoon : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Paste and glued sand are dry before anything goes over them.";

    /// <inheritdoc/>
    public override StepKind? OnlyKind => StepKind.Coat;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        if (moment.Step.Kind != StepKind.Coat || moment.Step.Coat() is not { } coat)
            yield break;
        foreach (var area in moment.Reached())
        {
            if (moment.Before[area].Top is not { } top || Concerns.Of(coat, top) != Concern.OverTexture)
                continue;
            if (moment.WaitsFor(top, DryingState.Recoatable, area, $"{top.Name} that is wet inside cracks under {coat.Name}, and sand moves.", "Leave it overnight.") is { } wait)
                yield return wait;
        }
    }
}
