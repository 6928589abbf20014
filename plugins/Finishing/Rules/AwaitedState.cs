using Pipeline.Abstractions;

namespace Pipeline.Plugins.Finishing.Rules;

/// <summary>The wait that a step asks for by itself.</summary>
public sealed class AwaitedState : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A step that waits for a drying state comes after the paint has reached it.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        if (moment.Step.First<Deed.Await>() is not { } awaits)
            yield break;
        foreach (var area in moment.Step.Areas)
        {
            if (moment.Before[area].Top is not { } top)
                continue;
            if (moment.WaitsFor(top, awaits.State, area, $"{top.Name} is not {Saying.InWords(awaits.State)} yet.", "Leave it longer.") is { } wait)
            {
                yield return wait;
            }
            else
            {
                yield return moment.Says(
                    Level.Warning,
                    area,
                    $"{top.Name} on {{areas}} never gets {Saying.InWords(awaits.State)} by itself.",
                    "Wait for another state, or varnish it first.",
                    new Pointer(top.Step, $"{top.Name} was laid here"));
            }
        }
    }
}
