using Pipeline.Abstractions;

namespace Pipeline.Planning;

/// <summary>Sittings without the room that the bench wants left free. A plan at the comfortable pace has them only where nothing else would do.</summary>
internal static class Fullness
{
    /// <summary>One warning for all sittings that are fuller than the bench's slack allows.</summary>
    public static IEnumerable<Finding> Of(Timetable table, Sequence<PlannedDay> days)
    {
        var bench = table.Batch.Bench;
        var most = 1 - bench.Slack.Fraction;
        var full = days.SelectMany(day => day.Sittings).Where(sitting => sitting.AttendedMinutes > Math.Ceiling(most * Minutes(sitting))).ToList();
        if (full.Count == 0)
            yield break;
        var worst = full.MaxBy(sitting => sitting.AttendedMinutes / Minutes(sitting))!;
        yield return new Finding
        {
            Level = Level.Warning,
            Place = bench.Place,
            Message = FormattableString.Invariant(
                $"{full.Count} of the sittings are more than {new Share(most)} full, {Phrases.Moment(worst.From.ToInstant(), bench.Zone)} with {worst.AttendedMinutes} of {Minutes(worst):0} min: no room for what takes longer, for touching up and tidying."),
            Remedy = "Move a step or lengthen the sittings; if you mean them to be so full, write 'slack: 0 %' at the bench.",
        };
    }

    private static double Minutes(PlannedSitting sitting) => (sitting.To.ToInstant() - sitting.From.ToInstant()).TotalMinutes;
}
