using Pipeline.Planning;

namespace Pipeline.Reports;

/// <summary>When a step is planned, what holds it back and what it holds back; a part of <see cref="WhyText"/>.</summary>
internal static class WhyPlanText
{
    private const int MostHeldBack = 12;

    public static void Set(Page page, StepReasons reasons, Plan plan)
    {
        var isShared = plan.Days.SelectMany(day => day.Sittings).Select(sitting => sitting.Painter).Distinct().Count() > 1;
        page.Blank();
        page.Line(new Run(reasons.IsDone ? "When it was done" : "When it is planned", Tone.Heading));
        foreach (var run in reasons.Runs)
        {
            var who = isShared && run.Painter is { } painter ? $", {painter}" : "";
            page.Hung(new Run($"  {Moments.Full(run.From)}–{Moments.From(run.From.Date, run.To)}"), Visible.Line($"{(run.Coat.Length > 0 ? $", {run.Coat}" : "")}{(run.Units.Length > 0 ? $", {run.Units}" : "")}{who}"), Tone.Strong);
            page.Hung(new Run(run.IsDone ? "    done: " : "    held back: ", Tone.Quiet), run.IsDone ? "as the plan before had it." : Visible.Line(run.Because));
        }

        if (!reasons.IsDone)
            page.Hung(new Run("    slack: ", Tone.Quiet), Slack(reasons));
        page.Blank();
        page.Line(new Run("What it holds back", Tone.Heading));
        if (reasons.HoldsBack.IsEmpty)
            page.Line("  Nothing.");
        foreach (var held in reasons.HoldsBack.Take(MostHeldBack))
            page.Hung(new Run($"  {Moments.Full(held.From)}  "), Visible.Line($"{held.What}{(held.IsBinding ? "" : ", held back longer by something else")}. {held.Because}"), held.IsBinding ? Tone.Plain : Tone.Quiet);
        if (reasons.HoldsBack.Count > MostHeldBack)
            page.Line(FormattableString.Invariant($"  and {reasons.HoldsBack.Count - MostHeldBack} more"));
    }

    private static string Slack(StepReasons reasons) => reasons.OnChain
        ? "none: it is one of the tasks that make the plan as long as it is (pipeline why FILE --late shows them all)."
        : reasons.Slack.TotalMinutes < 1 ? "none: something that follows it starts as soon as it can."
        : $"it could be done {Moments.Length((long)reasons.Slack.TotalMinutes)} later without anything else moving, if the hands are free then.";
}
