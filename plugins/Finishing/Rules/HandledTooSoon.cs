using Pipeline.Abstractions;

namespace Pipeline.Plugins.Finishing.Rules;

/// <summary>A piece handled, joined, sanded or dry-brushed while its paint is soft.</summary>
public sealed class HandledTooSoon : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Paint is hard enough to be held before anybody handles, joins, sands or dry-brushes the piece.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) =>
        step.Coat() is { } coat ? coat.Technique is Technique.DryBrush or Technique.Sponge
        : step.First<Deed.Prepare>() is not null || step.First<Deed.Join>() is not null || step.First<Deed.Handle>() is not null;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        var step = moment.Step;
        var join = step.First<Deed.Join>();
        foreach (var area in moment.Model.Areas)
        {
            if (!step.Areas.Contains(area.Name) && join?.Parts.Contains(area.Part) != true)
                continue;
            var surface = moment.Before[area.Name];
            if (surface.IsMasked || surface.Top is not { Role: not LayerRole.Decal } top)
                continue;
            if (moment.WaitsFor(top, DryingState.Handleable, area.Name, $"{top.Name} takes fingerprints and rubs off at the edges until then.", "Use the holder, or wait.") is { } wait)
                yield return step.Coat() is not null ? wait with { GivesWay = true } : wait;
        }
    }
}
