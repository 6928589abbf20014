using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Planning;

namespace Pipeline.Reports;

/// <summary>The week at a glance, one block of seven days for each week in which something happens, or is due right after one.</summary>
/// <param name="Weeks">In order.</param>
/// <param name="MinutesPerMark">How many attended minutes one mark of a bar stands for.</param>
internal sealed record WeekChart(Sequence<ChartWeek> Weeks, int MinutesPerMark)
{
    private const int MostMarks = 5;
    private static readonly int[] Scales = [5, 10, 15, 20, 30, 45, 60, 90, 120, 180, 240, 360];

    /// <summary>An hour at which nobody paints: what is on then, is on overnight.</summary>
    private static readonly LocalTime Night = new(4, 0);

    /// <summary>Draws up the chart of a plan.</summary>
    public static WeekChart Of(Plan plan)
    {
        var painters = plan.Days.SelectMany(day => day.Sittings).Select(sitting => sitting.Painter).Distinct().ToList();
        var ends = plan.Days.Select(day => day.Date).Concat(plan.Finishes.Where(f => f.Ready.ToInstant() >= plan.From.ToInstant()).Select(f => f.Ready.Date)).Select(Monday).Distinct().Order().ToList();
        var dues = plan.Finishes.Select(f => f.Due?.Date).OfType<LocalDate>().Select(Monday);
        var weeks = ends.Concat(dues.Where(due => ends.Contains(due.PlusWeeks(-1)))).Distinct().Order()
            .Select(monday => Week(plan, painters, monday))
            .ToSequence();
        var longest = weeks.SelectMany(w => w.Models).SelectMany(row => row.Days).Select(day => day.Minutes).DefaultIfEmpty(0).Max();
        return new WeekChart(weeks, Scales.FirstOrDefault(scale => longest <= scale * MostMarks, Scales[^1]));
    }

    /// <summary>Marks of a bar: at least one where something is done.</summary>
    public int Marks(int minutes) => minutes == 0 ? 0 : Math.Clamp((minutes + MinutesPerMark / 2) / MinutesPerMark, 1, MostMarks);

    private static ChartWeek Week(Plan plan, IReadOnlyList<string> painters, LocalDate monday)
    {
        var dates = Enumerable.Range(0, 7).Select(monday.PlusDays).ToSequence();
        var days = plan.Days.ToLookup(day => day.Date);
        var benches = painters.Select(painter => new BenchRow(painters.Count > 1 ? painter : null, dates.Select(date =>
        {
            var sittings = days[date].SelectMany(day => day.Sittings).Where(s => s.Painter == painter).ToList();
            return new BenchDay(sittings.Sum(s => s.AttendedMinutes), sittings.Select(s => s.MostPerDayMinutes ?? s.DayMinutes).FirstOrDefault());
        }).ToSequence()));
        var minutes = dates.Select(date => days[date].SelectMany(day => day.Sittings).SelectMany(s => s.Tasks)
            .GroupBy(task => task.Model).ToDictionary(model => model.Key, model => (int)model.Sum(t => Moments.Minutes(t.From, t.To)))).ToList();
        var masked = dates.Select(date => MasksOn(plan, date).Select(mask => mask.Model).ToHashSet()).ToList();
        var models = plan.Finishes.Select(finish => new ModelRow(finish.Model, finish.Units, dates.Select((date, i) => new ModelDay(
            minutes[i].GetValueOrDefault(finish.Model),
            masked[i].Contains(finish.Model),
            finish.Ready.Date == date,
            finish.Due?.Date == date)).ToSequence()));
        return new ChartWeek(dates, benches.ToSequence(), models.ToSequence());
    }

    /// <summary>Masks that are on during the night after a day.</summary>
    public static IEnumerable<PlannedMask> MasksOn(Plan plan, LocalDate day)
    {
        var night = (day.PlusDays(1) + Night).InZoneLeniently(plan.Zone).ToInstant();
        return plan.Masks.Where(mask => mask.On.ToInstant() < night && mask.Off.ToInstant() > night);
    }

    private static LocalDate Monday(LocalDate date) => date.PlusDays(1 - (int)date.DayOfWeek);
}

/// <summary>Seven days from a Monday.</summary>
internal sealed record ChartWeek(Sequence<LocalDate> Dates, Sequence<BenchRow> Benches, Sequence<ModelRow> Models);

/// <summary>How full a painter's days are; the name is null where there is only one painter.</summary>
internal sealed record BenchRow(string? Painter, Sequence<BenchDay> Days);

/// <summary>Attended minutes of the minutes the sittings are open, or of the most that the day may have.</summary>
internal sealed record BenchDay(int AttendedMinutes, int OpenMinutes);

/// <summary>What happens to a model.</summary>
internal sealed record ModelRow(string Model, int Units, Sequence<ModelDay> Days);

/// <summary>A model's day.</summary>
/// <param name="Minutes">With hands on it.</param>
/// <param name="IsMaskedOvernight">A mask stays on after it.</param>
/// <param name="IsReady">Its last layer can be handled on this day.</param>
/// <param name="IsDue">It is due on this day.</param>
internal sealed record ModelDay(int Minutes, bool IsMaskedOvernight, bool IsReady, bool IsDue);
