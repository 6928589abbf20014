using NodaTime;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Reads <c>sittings</c> and <c>extra</c>.</summary>
internal sealed class SittingBinder(Desk desk)
{
    /// <summary>Keys of a sitting.</summary>
    public static readonly Key[] Keys =
    [
        new("days", "the weekdays it recurs on; either this or a date", Needed: false, "mon-fri"),
        new("date", "the one date it is on; either this or days", Needed: false, "2026-12-05"),
        new("from", "when it begins", Needed: true, "19:00"),
        new("to", "when it ends; a time not after ‘from’ is on the next day, 24:00 is midnight", Needed: true, "22:00"),
    ];

    // Whoever paints through the night for longer than this has more likely put the two times the wrong way round.
    private const int LongestNightHours = 12;

    private readonly List<(SyntaxNode Node, LocalDateTime Edge)> edges = [];

    public List<WeeklySitting> Weekly { get; } = [];

    public List<DatedSitting> Dated { get; } = [];

    public void Bind(SyntaxNode node, bool mayBeWeekly)
    {
        var expected = mayBeWeekly ? "sittings such as { days: mon-fri, from: 19:00, to: 22:00 }" : "sittings such as { date: 2026-12-05, from: 10:00, to: 13:00 }";
        foreach (var item in desk.OneOrMore(node, expected))
        {
            if (desk.Mapping(item, expected) is { } mapping)
                BindOne(mapping, mayBeWeekly);
        }
    }

    /// <summary>Says where a sitting on a date begins or ends in an hour that the change to summer time skips.</summary>
    public void NoteSkippedHours(DateTimeZone zone)
    {
        foreach (var (node, edge) in edges)
        {
            if (zone.MapLocal(edge).Count == 0)
                desk.Note(node, SkippedHour(zone, edge), "The sitting is taken to the same moment on the new clock; write another time if that is not meant.");
        }
    }

    /// <summary>What to say about a time that the clocks skip.</summary>
    public static string SkippedHour(DateTimeZone zone, LocalDateTime time) =>
        FormattableString.Invariant($"There is no {time:HH:mm} on {time:yyyy-MM-dd} in {zone.Id}: the clocks go forward over it.");

    private void BindOne(MappingNode mapping, bool mayBeWeekly)
    {
        Sequence<IsoDayOfWeek>? days = null;
        LocalDate? date = null;
        LocalTime? from = null;
        LocalTime? to = null;
        foreach (var (key, value) in mapping.Entries)
        {
            switch (key.Text)
            {
                case "days" when mayBeWeekly:
                    days = Days(value);
                    break;
                case "date":
                    date = desk.Said(value, CalendarText.Date, CalendarText.DateExpected);
                    break;
                case "from":
                    from = desk.Said(value, text => CalendarText.Time(text, mayBeMidnightAtEnd: false), CalendarText.TimeExpected);
                    break;
                case "to":
                    to = desk.Said(value, text => CalendarText.Time(text, mayBeMidnightAtEnd: true), CalendarText.TimeExpected);
                    break;
                default:
                    desk.UnknownKey(key, mayBeWeekly ? "a sitting" : "an extra sitting", Keys.Select(known => known.Name).Where(name => mayBeWeekly || name != "days"));
                    break;
            }
        }

        Check(mapping, mayBeWeekly, from, to);
        if (from is not { } start || to is not { } end || (start == end && end != LocalTime.Midnight))
            return;
        if (days is { IsEmpty: false } weekdays && mapping["date"] is null)
            Weekly.Add(new WeeklySitting(weekdays, start, end, mapping.Place));
        if (date is not { } on || mapping["days"] is not null)
            return;
        Dated.Add(new DatedSitting(on, start, end, mapping.Place));
        edges.Add((mapping["from"]!, on + start));
        edges.Add((mapping["to"]!, (end > start ? on : on.PlusDays(1)) + end));
    }

    private void Check(MappingNode mapping, bool mayBeWeekly, LocalTime? from, LocalTime? to)
    {
        if (mapping["days"] is null && mapping["date"] is null)
            desk.MissingKey(mapping, "The sitting", mayBeWeekly ? "days" : "date", mayBeWeekly ? "its weekdays, or ‘date: ’ and one date" : "its date");
        if (mapping["days"] is not null && mapping["date"] is { } date && mayBeWeekly)
            desk.Error(date, "The sitting has both weekdays and a date.", "Write two sittings, or leave one of the keys out.");
        if (mapping["from"] is null)
            desk.MissingKey(mapping, "The sitting", "from", "when it begins");
        if (mapping["to"] is null)
            desk.MissingKey(mapping, "The sitting", "to", "when it ends");
        // 00:00 to 24:00 is a whole day; any other sitting that ends when it begins is a slip.
        var isWholeDay = mapping["to"] is TextNode { Text: "24:00" };
        if (from is not null && from == to && !isWholeDay)
            desk.Error(mapping["to"]!, "The sitting ends when it begins.", "Write a later time.");
        if (from is { } start && to is { } end && end < start && end != LocalTime.Midnight && LengthOverMidnight(start, end) is var length && length > Duration.FromHours(LongestNightHours))
        {
            desk.Note(
                mapping["to"]!,
                FormattableString.Invariant($"The sitting from {start:HH:mm} to {end:HH:mm} goes on over midnight, for {(int)length.TotalHours} h{(length.Minutes == 0 ? "" : $" {length.Minutes} min")}."),
                FormattableString.Invariant($"If it is the other way round, write 'from: {end:HH:mm}, to: {start:HH:mm}'."));
        }
    }

    private static Duration LengthOverMidnight(LocalTime start, LocalTime end) => Duration.FromHours(24) - (start - end).ToDuration();

    private Sequence<IsoDayOfWeek>? Days(SyntaxNode node)
    {
        var days = new List<IsoDayOfWeek>();
        foreach (var item in desk.OneOrMore(node, CalendarText.DaysExpected))
        {
            if (desk.Says(item, CalendarText.Days, CalendarText.DaysExpected, out var some))
                days.AddRange(some);
        }

        return days.Distinct().Order().ToSequence();
    }
}
