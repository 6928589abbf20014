using NodaTime;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Dates, times of day and weekdays as a workflow writes them.</summary>
public static class CalendarText
{
    /// <summary>What to write for a date and time.</summary>
    internal const string DateTimeExpected = "a date and time such as 2026-12-12 18:00";

    /// <summary>What to write for a date.</summary>
    internal const string DateExpected = "a date such as 2026-12-12";

    /// <summary>What to write for a time of day.</summary>
    internal const string TimeExpected = "a time of day such as 19:00";

    /// <summary>What to write for weekdays.</summary>
    internal const string DaysExpected = "days such as mon-fri, sat, [mon, wed] or daily";

    private static readonly (string Short, string Long)[] Weekdays =
    [
        ("mon", "monday"), ("tue", "tuesday"), ("wed", "wednesday"), ("thu", "thursday"), ("fri", "friday"), ("sat", "saturday"), ("sun", "sunday"),
    ];

    /// <summary>A date and time of day: <c>2026-12-12 18:00</c>, also with a <c>T</c> between.</summary>
    public static Written<LocalDateTime> DateTime(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var gap = text.AsSpan().IndexOfAny(' ', 'T');
        if (gap < 0)
        {
            var alone = Date(text);
            return Written<LocalDateTime>.Not(alone.Wrong is null ? $"‘{text}’ says the day but not the time of day." : alone.Wrong);
        }

        var date = Date(text[..gap]);
        if (date.Wrong is not null)
            return Written<LocalDateTime>.Not(date.Wrong);
        var time = Time(text[(gap + 1)..].Trim(), mayBeMidnightAtEnd: false);
        return time.Wrong is not null ? Written<LocalDateTime>.Not(time.Wrong) : Written<LocalDateTime>.Says(date.Value + time.Value);
    }

    /// <summary>A date: <c>2026-12-12</c>, from the year 2000 to 2199.</summary>
    public static Written<LocalDate> Date(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length != 10 || text[4] != '-' || text[7] != '-' || Digits(text, 0, 4) is not { } year || Digits(text, 5, 2) is not { } month || Digits(text, 8, 2) is not { } day)
            return Written<LocalDate>.Not(text.Length == 0 ? "Nothing is written here." : $"‘{NumberText.Shown(text)}’ is not a date.");
        if (year is < 2000 or > 2199)
            return Written<LocalDate>.Not($"The year of ‘{text}’ is not from 2000 to 2199.");
        if (month is < 1 or > 12)
            return Written<LocalDate>.Not($"There is no month {text[5..7]}.");
        return day >= 1 && day <= CalendarSystem.Iso.GetDaysInMonth(year, month)
            ? Written<LocalDate>.Says(new LocalDate(year, month, day))
            : Written<LocalDate>.Not($"There is no day {text[8..]} in {text[..7]}.");
    }

    /// <summary>A time of day. <c>24:00</c> is midnight at the end of a sitting.</summary>
    internal static Written<LocalTime> Time(string text, bool mayBeMidnightAtEnd)
    {
        var colon = text.IndexOf(':', StringComparison.Ordinal);
        if (colon is not (1 or 2) || text.Length != colon + 3 || Digits(text, 0, colon) is not { } hour || Digits(text, colon + 1, 2) is not { } minute)
            return Written<LocalTime>.Not(text.Length == 0 ? "Nothing is written here." : $"‘{NumberText.Shown(text)}’ is not a time of day.");
        if (hour == 24 && minute == 0 && mayBeMidnightAtEnd)
            return Written<LocalTime>.Says(LocalTime.Midnight);
        return hour < 24 && minute < 60
            ? Written<LocalTime>.Says(new LocalTime(hour, minute))
            : Written<LocalTime>.Not($"A day has no {text}{(hour == 24 ? "; write 00:00 of the next day" : "")}.");
    }

    /// <summary>One date or a range of dates, both ends included: <c>2026-12-08..2026-12-10</c>.</summary>
    internal static Written<AwayDays> Dates(string text)
    {
        var dots = text.IndexOf("..", StringComparison.Ordinal);
        var first = Date(dots < 0 ? text : text[..dots].Trim());
        if (first.Wrong is not null)
            return Written<AwayDays>.Not(first.Wrong);
        var last = dots < 0 ? first : Date(text[(dots + 2)..].Trim());
        if (last.Wrong is not null)
            return Written<AwayDays>.Not(last.Wrong);
        return first.Value <= last.Value
            ? Written<AwayDays>.Says(new AwayDays(first.Value, last.Value))
            : Written<AwayDays>.Not($"‘{text}’ ends before it begins.");
    }

    /// <summary>Weekdays: <c>mon-fri</c>, <c>sat</c>, <c>daily</c>, several parted by commas.</summary>
    internal static Written<Sequence<IsoDayOfWeek>> Days(string text)
    {
        var days = new List<IsoDayOfWeek>();
        foreach (var piece in text.Split(','))
        {
            var name = piece.Trim();
            if (name == "daily")
            {
                days.AddRange(Enumerable.Range(1, 7).Select(day => (IsoDayOfWeek)day));
                continue;
            }

            var ends = name.Split('-', '–');
            var (first, last) = (Day(ends[0].Trim()), Day(ends[^1].Trim()));
            if (ends.Length > 2 || first is null || last is null)
                return Written<Sequence<IsoDayOfWeek>>.Not(name.Length == 0 ? "Nothing is written here." : $"‘{NumberText.Shown(name)}’ is not a weekday.");
            for (var day = first.Value; ; day = day % 7 + 1)
            {
                days.Add((IsoDayOfWeek)day);
                if (day == last.Value)
                    break;
            }
        }

        return Written<Sequence<IsoDayOfWeek>>.Says(days.Distinct().ToSequence());
    }

    private static int? Day(string name)
    {
        for (var i = 0; i < Weekdays.Length; i++)
        {
            if (string.Equals(name, Weekdays[i].Short, StringComparison.OrdinalIgnoreCase) || string.Equals(name, Weekdays[i].Long, StringComparison.OrdinalIgnoreCase))
                return i + 1;
        }

        return null;
    }

    private static int? Digits(string text, int start, int length)
    {
        var value = 0;
        for (var i = start; i < start + length; i++)
        {
            if (!char.IsAsciiDigit(text[i]))
                return null;
            value = value * 10 + (text[i] - '0');
        }

        return value;
    }
}
