using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>Water meets solvent in an airbrush that was not cleaned out.</summary>
public sealed class ToolNotFlushed : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Between water and solvent or alcohol the tool is cleaned out.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> JudgeRoute(WalkedSteps route)
    {
        foreach (var (before, moment) in route.Refills())
        {
            var (held, holds) = (before.Step.Work.Load!, moment.Step.Work.Load!);
            if (moment.Step.Work.CleanedOut != ToolCleaning.None || !Loads.Gel(held.Family.Carrier, holds.Family.Carrier))
                continue;
            yield return moment.Says(
                Level.Error,
                moment.Step.Areas,
                $"{holds.Name} goes into the {moment.Step.Work.Tool} straight after {held.Name}: water and {Other(held, holds)} gel in the nozzle.",
                "Flush it with what cleans the one, then with what thins the other: say 'clean-out: flush'.",
                new Pointer(before.Step.Index, $"{held.Name} was sprayed here"))
                .MendedBy(moment.SetKey("clean-out", "flush"));
        }
    }

    private static string Other(Paint held, Paint holds)
    {
        var other = held.Family.Carrier == Carrier.Water ? holds : held;
        return other.Family.Carrier == Carrier.Alcohol ? "alcohol" : "solvent";
    }
}
