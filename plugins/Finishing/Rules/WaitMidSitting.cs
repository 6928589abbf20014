using Pipeline.Abstractions;

namespace Pipeline.Plugins.Finishing.Rules;

/// <summary>The hands are idle in the middle of a sitting for a wait that could run overnight.</summary>
public sealed class WaitMidSitting : TradePlanRule
{
    private const double LongMinutes = 60;

    /// <inheritdoc/>
    public override string Summary => "A long wait runs between sittings, not in the middle of one, where nothing is late for it.";

    /// <inheritdoc/>
    public override IEnumerable<BatchVerdict> JudgePlan(PlanView plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        for (var s = 0; s < plan.Sittings.Count; s++)
        {
            var sitting = plan.Sittings[s];
            if (Idle(sitting) is not { } after || Next(plan, s) is not { } next)
                continue;
            var rest = sitting.Work.Skip(after).Where(work => work.Step is not null).ToList();
            if (rest.Count == 0 || rest.Exists(work => work.CanWaitUntil is not { } latest || latest < next.From.AddMinutes(Before(rest, work))))
                continue;
            if (rest.Sum(work => work.Minutes) > ((1 - plan.Slack.Fraction) * next.OpenMinutes) - next.UsedMinutes)
                continue;
            yield return Verdict(plan, plan.Batch.Painters == 1 ? "The hands are" : $"{sitting.Painter} is", sitting.Work[after - 1], rest[0], next);
        }
    }

    // The first piece of work that the hands wait long for.
    private static int? Idle(SittingView sitting)
    {
        for (var i = 1; i < sitting.Work.Count; i++)
        {
            if ((sitting.Work[i].From - sitting.Work[i - 1].To).TotalMinutes >= LongMinutes)
                return i;
        }

        return null;
    }

    // the next sitting of the same hands in which something is done, on another day: the night does the waiting
    private static SittingView? Next(PlanView plan, int sitting)
    {
        var here = plan.Sittings[sitting];
        return plan.Sittings.Skip(sitting + 1).FirstOrDefault(other => other.Painter == here.Painter && other.From.Date > here.From.Date);
    }

    private static double Before(List<WorkView> rest, WorkView work) => rest.TakeWhile(other => other != work).Sum(other => other.Minutes);

    private static BatchVerdict Verdict(PlanView plan, string who, WorkView before, WorkView first, SittingView next)
    {
        var at = first.Step!.Value;
        var step = plan.Batch.Routes[at.Route].Moments[at.Step].Step;
        return new BatchVerdict
        {
            Level = Level.Note,
            Place = step.Place,
            Step = at,
            Areas = step.Areas,
            Message = FormattableString.Invariant(
                $"{who} idle from {before.To:ddd d MMM HH:mm} to {first.From:HH:mm}, until '{step.Verb} {{areas}}' can go on; that wait could run overnight."),
            Remedy = FormattableString.Invariant($"Stop there and go on with it {next.From:ddd d MMM}; nothing else has to wait for it."),
        };
    }
}
