using NodaTime.Text;
using Pipeline.Planning;

namespace Pipeline.Reports;

/// <summary>A plan as Markdown with boxes to tick; the same content and order as <see cref="PlanText"/>.</summary>
public static class PlanMarkdown
{
    private static readonly LocalDatePattern HeadPattern = LocalDatePattern.CreateWithInvariantCulture("ddd d");

    /// <summary>The plan as a Markdown document.</summary>
    public static string Render(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var page = new MarkdownText();
        page.Heading(1, MarkdownText.Escaped(plan.Batch));
        page.Block(PlanFacts.Dates(plan));
        var (ready, tone) = PlanFacts.Ready(plan);
        page.Block(tone == Tone.Error ? $"**{ready}**" : ready);
        page.Line(PlanFacts.Size(plan));
        if (PlanFacts.Done(plan) is { } done)
            page.Line(MarkdownText.Escaped(done));
        if (PlanFacts.Kept(plan) is { } kept)
            page.Line(MarkdownText.Escaped(kept));
        if (PlanFacts.Past(plan) is { } past)
            page.Line(MarkdownText.Escaped(past));
        page.Line(MarkdownText.Escaped(PlanFacts.Pace(plan)));
        var speaking = plan.Findings.Speaking().ToList();
        if (speaking.Count > 0)
            page.Block($"**{FindingsOrder.Counted(speaking)}**: set at the task or listed under Findings.");
        SetChart(page, plan);
        ClosingMarkdown.SetFindings(page, plan);
        ClosingMarkdown.SetWaysOut(page, plan);
        var sittings = new SittingMarkdown(page, plan);
        foreach (var day in plan.Days)
        {
            foreach (var sitting in day.Sittings)
                sittings.Set(day.Date, sitting);
        }

        ClosingMarkdown.Set(page, plan);
        return page.ToString();
    }

    private static void SetChart(MarkdownText page, Plan plan)
    {
        var chart = WeekChart.Of(plan);
        if (chart.Weeks.IsEmpty)
            return;
        page.Heading(2, "The week at a glance");
        foreach (var week in chart.Weeks)
        {
            page.Table(
                [new Column($"{Moments.DayOnly(week.Dates[0])} - {Moments.DayOnly(week.Dates[^1])}"), .. week.Dates.Select(date => new Column(HeadPattern.Format(date)))],
                [
                    .. week.Benches.Where(row => row.Days.Any(day => day.OpenMinutes > 0)).Select(row => (IReadOnlyList<string>)
                        [MarkdownText.Escaped(row.Painter is { } painter ? $"{painter}, min" : "bench, min"), .. row.Days.Select(Filled)]),
                    .. week.Models.Where(row => row.Days.Any(day => Bar(chart, day).Length > 0)).Select(row => (IReadOnlyList<string>)
                        [MarkdownText.Escaped(Amounts.Model(row.Model, row.Units)), .. row.Days.Select(day => Bar(chart, day))]),
                ],
                leaveOutEmpty: false);
        }

        page.Block(FormattableString.Invariant($"■ about {chart.MinutesPerMark} min, **m** masked overnight, **\\*** {PlanFacts.ReadyWord(plan)}, **D** due"));
    }

    private static string Filled(BenchDay day) =>
        day.OpenMinutes == 0 ? "" : FormattableString.Invariant($"{day.AttendedMinutes}/{day.OpenMinutes}");

    private static string Bar(WeekChart chart, ModelDay day) => string.Join(' ', new[]
    {
        new string('■', chart.Marks(day.Minutes)),
        day.IsMaskedOvernight ? "**m**" : "",
        day.IsReady ? "**\\***" : "",
        day.IsDue ? "**D**" : "",
    }.Where(mark => mark.Length > 0));
}
