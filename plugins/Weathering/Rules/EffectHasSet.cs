using Pipeline.Abstractions;

namespace Pipeline.Plugins.Weathering.Rules;

/// <summary>An effect cleaned back after it has set.</summary>
public sealed class EffectHasSet : AreaRule
{
    /// <inheritdoc/>
    public override string Summary => "An enamel effect is cleaned back while it can still be moved.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.First<Deed.CleanBack>() is { Of: null };

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, string area, Surface surface)
    {
        if (surface.Top is not { } effect || !effect.IsSpiritEffect() || effect.Family?.OpenTime is not { } open)
            return null;
        var hopeless = new Drying(moment.Tables.Figure(RuleFigures.EffectSet).Value);
        if (!(open < hopeless))
            return null;
        return moment.WaitsSince(
            effect, default, "cleaned back", area, $"{effect.Name} has set and no longer wipes off.", "Lay it on a shorter stretch and clean back sooner.") with
        {
            Span = new Span.AtMost(open, hopeless),
        };
    }
}
