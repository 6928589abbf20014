using NodaTime.Text;

namespace Pipeline.Reports;

/// <summary>The week at a glance, set in columns: seven days wide, a bar for each model and day.</summary>
internal static class ChartText
{
    private const int NarrowestLabel = 17;
    private const int WidestLabel = 24;
    private const int NarrowestCell = 7;
    private static readonly LocalDatePattern HeadPattern = LocalDatePattern.CreateWithInvariantCulture("ddd d");

    public static void Set(Page page, WeekChart chart, string readyWord)
    {
        if (chart.Weeks.IsEmpty)
            return;
        var names = chart.Weeks.SelectMany(w => w.Models.Select(row => Amounts.Model(row.Model, row.Units)).Concat(w.Benches.Select(Bench)));
        var label = Math.Clamp(names.Max(Cells.Width) + 2, NarrowestLabel, Math.Min(WidestLabel, page.Style.Width - 7 * NarrowestCell));
        var cell = Math.Min(9, (page.Style.Width - label) / 7);
        foreach (var week in chart.Weeks)
            SetWeek(page, chart, week, label, cell);
        page.Blank();
        var bar = page.Style.Drawn ? "■" : "#";
        var marks = new List<string> { FormattableString.Invariant($"{bar} about {chart.MinutesPerMark} min") };
        var days = chart.Weeks.SelectMany(w => w.Models).SelectMany(row => row.Days).ToList();
        if (days.Any(day => day.IsMaskedOvernight))
            marks.Add("m masked overnight");
        if (days.Any(day => day.IsReady))
            marks.Add($"* {readyWord}");
        if (days.Any(day => day.IsDue))
            marks.Add("D due");
        page.Line(new Run(string.Join("   ", marks), Tone.Quiet));
    }

    private static void SetWeek(Page page, WeekChart chart, ChartWeek week, int label, int cell)
    {
        page.Blank();
        page.Line(
            new Run(Cells.Left($"{Moments.DayOnly(week.Dates[0])} - {Moments.DayOnly(week.Dates[^1])}", label), Tone.Heading),
            new Run(string.Concat(week.Dates.Select(date => Cells.Left(HeadPattern.Format(date), cell))), Tone.Heading));
        foreach (var row in week.Benches.Where(row => row.Days.Any(day => day.OpenMinutes > 0)))
            SetRow(page, label, Bench(row), [.. row.Days.Select(day => new Run(Cells.Left(Filled(day, cell), cell), Tone.Quiet))]);
        foreach (var row in week.Models)
        {
            if (row.Days.All(day => day is { Minutes: 0, IsMaskedOvernight: false, IsReady: false, IsDue: false }))
                continue;
            SetRow(page, label, Amounts.Model(row.Model, row.Units), [.. row.Days.Select(day => new Run(Cells.Left(Bar(page, chart, day), cell)))]);
        }
    }

    private static void SetRow(Page page, int label, string name, IReadOnlyList<Run> cells)
    {
        var broken = Cells.Wrap(name, label - 2);
        page.Line([new Run(Cells.Left(broken[0], label)), .. cells]);
        foreach (var rest in broken.Skip(1))
            page.Line($"  {rest}");
    }

    private static string Bench(BenchRow row) => row.Painter is { } painter ? $"{Visible.Line(painter)}, min" : "bench, min";

    /// <summary>Minutes filled of those open; only those filled where the page is too narrow for both.</summary>
    private static string Filled(BenchDay day, int cell)
    {
        if (day.OpenMinutes == 0)
            return "-";
        var both = FormattableString.Invariant($"{day.AttendedMinutes}/{day.OpenMinutes}");
        return both.Length < cell ? both : FormattableString.Invariant($"{day.AttendedMinutes}");
    }

    private static string Bar(Page page, WeekChart chart, ModelDay day) =>
        new string(page.Style.Drawn ? '■' : '#', chart.Marks(day.Minutes))
        + (day.IsMaskedOvernight ? "m" : "")
        + (day.IsReady ? "*" : "")
        + (day.IsDue ? "D" : "");
}
