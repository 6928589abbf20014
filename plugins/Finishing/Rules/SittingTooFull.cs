using Pipeline.Abstractions;

namespace Pipeline.Plugins.Finishing.Rules;

/// <summary>A sitting leaves no room for what takes longer.</summary>
public sealed class SittingTooFull : TradePlanRule
{
    // halves of a minute are rounded up to a whole one on the plan
    private const double Tolerance = 1;

    /// <inheritdoc/>
    public override string Summary => "A part of each sitting stays free.";

    /// <inheritdoc/>
    public override IEnumerable<BatchVerdict> JudgePlan(PlanView plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var most = 1 - plan.Slack.Fraction;
        var full = plan.Sittings.Where(sitting => sitting.UsedMinutes >= Tolerance + (most * sitting.OpenMinutes)).ToList();
        if (full.Count == 0)
            yield break;
        var worst = full.MaxBy(sitting => sitting.UsedMinutes / sitting.OpenMinutes)!;
        yield return new BatchVerdict
        {
            Level = Level.Warning,
            Place = plan.Batch.Bench,
            Message = FormattableString.Invariant(
                $"{Sittings(full.Count)} more than {new Share(most)} full{(plan.IsWhole ? "" : " with what you have decided")}, {worst.From:ddd d MMM HH:mm} with {Math.Ceiling(worst.UsedMinutes)} of {worst.OpenMinutes:0} min: no room for what takes longer, for touching up and tidying."),
            Remedy = "Move a step or lengthen the sittings; if you mean them to be so full, write 'slack: 0 %' at the bench.",
        };
    }

    private static string Sittings(int count) => count == 1 ? "One sitting is" : FormattableString.Invariant($"{count} of the sittings are");
}
