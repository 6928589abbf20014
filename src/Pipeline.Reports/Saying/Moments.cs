using NodaTime;
using NodaTime.Text;
using Pipeline.Planning;

namespace Pipeline.Reports;

/// <summary>Moments and lengths of time as a painter reads them: to the minute, with no more of the date than is needed.</summary>
internal static class Moments
{
    private const int MostDaysOfMargin = 60;

    private static readonly LocalTimePattern TimePattern = LocalTimePattern.CreateWithInvariantCulture("HH':'mm");
    private static readonly LocalDatePattern WeekdayPattern = LocalDatePattern.CreateWithInvariantCulture("ddd");
    private static readonly LocalDatePattern DayPattern = LocalDatePattern.CreateWithInvariantCulture("ddd d MMM");
    private static readonly LocalDatePattern DayOnlyPattern = LocalDatePattern.CreateWithInvariantCulture("d MMM");
    private static readonly LocalDatePattern YearPattern = LocalDatePattern.CreateWithInvariantCulture("ddd d MMM uuuu");

    /// <summary><c>19:05</c>; <c>02:30 CEST</c> where the clock shows that twice.</summary>
    public static string Time(ZonedDateTime moment)
    {
        var whole = WholeMinutes(moment);
        return TimePattern.Format(whole.TimeOfDay) + TwiceShown.Which(whole);
    }

    /// <summary>A time of any day: <c>19:05</c>.</summary>
    public static string Clock(LocalTime time) => TimePattern.Format(time);

    /// <summary><c>Fri 4 Dec</c>.</summary>
    public static string Day(LocalDate date) => DayPattern.Format(date);

    /// <summary><c>4 Dec</c>.</summary>
    public static string DayOnly(LocalDate date) => DayOnlyPattern.Format(date);

    /// <summary><c>Fri 4 Dec 2026</c>.</summary>
    public static string DayAndYear(LocalDate date) => YearPattern.Format(date);

    /// <summary><c>Fri 4 Dec 19:05</c>.</summary>
    public static string Full(ZonedDateTime moment)
    {
        var whole = WholeMinutes(moment);
        return $"{Day(whole.Date)} {Time(whole)}";
    }

    /// <summary>Seen from a day: <c>20:15</c> on it, <c>Fri 07:10</c> within the next six days, else <c>Fri 11 Dec 07:10</c>.</summary>
    public static string From(LocalDate day, ZonedDateTime moment)
    {
        var whole = WholeMinutes(moment);
        var time = Time(whole);
        return Period.DaysBetween(day, whole.Date) switch
        {
            0 => time,
            > 0 and <= 6 => $"{WeekdayPattern.Format(whole.Date)} {time}",
            _ => $"{Day(whole.Date)} {time}",
        };
    }

    /// <summary>A sitting's length: <c>19:00-21:00</c>; <c>19:00-01:00</c> if it ends on the next day.</summary>
    public static string Span(ZonedDateTime from, ZonedDateTime to) => $"{Time(from)}-{Time(to)}";

    /// <summary><c>45 min</c>, <c>2 h 30 min</c>, <c>2 d 4 h</c>. From a day on minutes no longer matter.</summary>
    public static string Length(long minutes)
    {
        var (days, hours, rest) = (minutes / 1440, minutes % 1440 / 60, minutes % 60);
        return minutes switch
        {
            < 60 => FormattableString.Invariant($"{minutes} min"),
            < 1440 => Joined(minutes / 60, "h", rest, "min"),
            _ => Joined(days, "d", hours, "h"),
        };
    }

    /// <summary>Time to spare or short of: beyond two months nobody counts hours, <c>9 weeks</c>.</summary>
    public static string Margin(long minutes) =>
        minutes > MostDaysOfMargin * 1440 ? FormattableString.Invariant($"{minutes / (7 * 1440)} weeks") : Length(minutes);

    /// <summary>Time at the bench, which nobody counts in days: <c>45 min</c>, <c>24 h 58 min</c>.</summary>
    public static string Hours(long minutes) => minutes < 60 ? FormattableString.Invariant($"{minutes} min") : Joined(minutes / 60, "h", minutes % 60, "min");

    /// <summary>Whole minutes from one moment to another, rounded down.</summary>
    public static long Minutes(ZonedDateTime from, ZonedDateTime to) => (long)Math.Floor((to.ToInstant() - from.ToInstant()).TotalMinutes);

    private static string Joined(long large, string largeUnit, long small, string smallUnit) =>
        small == 0 ? FormattableString.Invariant($"{large} {largeUnit}") : FormattableString.Invariant($"{large} {largeUnit} {small} {smallUnit}");

    /// <summary>A wait that ends within a minute is over at the next one.</summary>
    private static ZonedDateTime WholeMinutes(ZonedDateTime moment)
    {
        var instant = moment.ToInstant();
        var beyond = Duration.FromTicks(instant.ToUnixTimeTicks() % NodaConstants.TicksPerMinute);
        if (beyond < Duration.Zero)
            beyond += Duration.FromMinutes(1);
        var whole = beyond == Duration.Zero ? instant : instant - beyond + Duration.FromMinutes(1);
        return whole.InZone(moment.Zone);
    }
}
