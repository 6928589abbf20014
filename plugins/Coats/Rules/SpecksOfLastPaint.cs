using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>Pale paint, clear colour or varnish after metal or dark in an airbrush that was not stripped.</summary>
public sealed class SpecksOfLastPaint : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "The tool is stripped between metal or dark and anything pale or clear.";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> JudgeRoute(WalkedSteps route)
    {
        foreach (var (before, moment) in route.Refills())
        {
            var (held, holds) = (before.Step.Work.Load!, moment.Step.Work.Load!);
            var cleaned = moment.Step.Work.CleanedOut;
            var leaves = held.IsMetallic && cleaned is ToolCleaning.None or ToolCleaning.Flush ? "flakes"
                : held.IsDark() && cleaned == ToolCleaning.None ? "dark"
                : null;
            // water after solvent is the graver of the two
            if (leaves is null || !Shows(holds) || (cleaned == ToolCleaning.None && Loads.Gel(held.Family.Carrier, holds.Family.Carrier)))
                continue;
            yield return moment.Says(
                Level.Warning,
                moment.Step.Areas,
                $"{holds.Name} follows {held.Name} in a {moment.Step.Work.Tool} that was {(cleaned == ToolCleaning.None ? "not cleaned out" : "only flushed")}: {(leaves == "flakes" ? "flakes" : "dark specks")} end up in it.",
                "Strip the tool first ('clean-out: strip'), or spray light before dark before metal.",
                new Pointer(before.Step.Index, $"{held.Name} was sprayed here"))
                .MendedBy(moment.SetKey("clean-out", "strip"));
        }
    }

    private static bool Shows(Paint paint) => !paint.IsMetallic && (paint.IsClear || paint.Family.IsVarnish || paint.IsPale());
}
