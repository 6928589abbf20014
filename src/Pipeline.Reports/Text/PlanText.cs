using Pipeline.Planning;
using Spectre.Console;

namespace Pipeline.Reports;

/// <summary>
/// A plan as a page for the wall beside the bench: the week at a glance, then every sitting with its tasks,
/// then what a painter wants to know around them. The same layout on a terminal and in a pipe.
/// </summary>
public static class PlanText
{
    /// <summary>The plan as text.</summary>
    public static string Render(Plan plan, TextStyle style) => Set(plan, style).ToString();

    /// <summary>Puts the plan on a console, as it suits it.</summary>
    public static void Write(Plan plan, IAnsiConsole console) => Set(plan, TextStyle.For(console)).WriteTo(console);

    private static Page Set(Plan plan, TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(style);
        var page = new Page(style);
        SetHead(page, plan);
        ChartText.Set(page, WeekChart.Of(plan), PlanFacts.ReadyWord(plan));
        ClosingText.SetFindings(page, plan);
        ClosingText.SetWaysOut(page, plan);
        var sittings = new SittingText(page, plan);
        foreach (var day in plan.Days)
        {
            foreach (var sitting in day.Sittings)
                sittings.Set(day.Date, sitting);
        }

        ClosingText.Set(page, plan);
        return page;
    }

    private static void SetHead(Page page, Plan plan)
    {
        page.Ends(Visible.Line(plan.Batch), Tone.Heading, new Run(PlanFacts.Dates(plan)));
        page.Rule('=');
        var (ready, tone) = PlanFacts.Ready(plan);
        page.Hung("", ready, tone);
        page.Hung("", PlanFacts.Size(plan));
        if (PlanFacts.Done(plan) is { } done)
            page.Hung("", done);
        if (PlanFacts.Kept(plan) is { } kept)
            page.Hung("", kept);
        if (PlanFacts.Past(plan) is { } past)
            page.Hung("", past, Tone.Warning);
        page.Hung("", PlanFacts.Pace(plan), Tone.Quiet);
        var speaking = plan.Findings.Speaking().ToList();
        if (speaking.Count > 0)
            page.Hung("", $"{FindingsOrder.Counted(speaking)}: {Where(PlanFacts.NotBeside(plan).Count, speaking.Count)}.", speaking.Max(f => f.Level).Tone());
    }

    private static string Where(int listed, int all) => listed == 0 ? "marked with ! at the task"
        : listed == all ? "see Findings"
        : "marked with ! at the task, or under Findings";
}
