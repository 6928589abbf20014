using NodaTime;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Where and when the work is done.</summary>
public sealed record Bench
{
    /// <summary>The time zone the file's times are in.</summary>
    public required DateTimeZone Zone { get; init; }

    /// <summary>Sittings that recur by weekday, in file order.</summary>
    public Sequence<WeeklySitting> Weekly { get; init; }

    /// <summary>Sittings on one date, besides the weekly ones.</summary>
    public Sequence<DatedSitting> Dated { get; init; }

    /// <summary>Dates on which nobody sits at the bench, whatever the other lists say; inclusive ranges.</summary>
    public Sequence<AwayDays> Away { get; init; }

    /// <summary>Who sits there, at least one.</summary>
    public required Sequence<Painter> Painters { get; init; }

    /// <summary>Tools and places with their number, by bench name: <c>airbrush</c>, <c>drying rack</c>.</summary>
    public Sequence<BenchTool> Tools { get; init; }

    /// <summary>The climate by day and by night.</summary>
    public BenchClimate Climate { get; init; } = BenchClimate.Standard;

    /// <summary>What protects the painters, as far as the file says.</summary>
    public Protection Protection { get; init; } = Protection.Unsaid;

    /// <summary>What the airbrush's cup holds, or null if the file does not say.</summary>
    public Volume? Cup { get; init; }

    /// <summary>
    /// The share at the end of each sitting that a plan leaves free for what takes longer, touching up and tidying; 15 % unless the file says (common practice).
    /// </summary>
    public Share Slack { get; init; } = new(0.15);

    /// <summary>Most attended minutes in one day for one painter, in all sittings that begin on it together; null for as much as they hold.</summary>
    public Attended? MostPerDay { get; init; }

    /// <summary>The place of <c>bench</c> in the file.</summary>
    public required Place Place { get; init; }
}

/// <summary>A sitting on each of some weekdays. Ends on the next day if <paramref name="To"/> is not after <paramref name="From"/>.</summary>
public sealed record WeeklySitting(Sequence<IsoDayOfWeek> Days, LocalTime From, LocalTime To, Place Place);

/// <summary>A sitting on one date. Ends on the next day if <paramref name="To"/> is not after <paramref name="From"/>.</summary>
public sealed record DatedSitting(LocalDate Date, LocalTime From, LocalTime To, Place Place);

/// <summary>Days without a sitting, both ends included.</summary>
public sealed record AwayDays(LocalDate First, LocalDate Last);

/// <summary>One pair of hands.</summary>
/// <param name="Name">As the file gives it, or <c>painter 1</c>, <c>painter 2</c> …</param>
/// <param name="Does">The verbs this painter may do; empty means all.</param>
public sealed record Painter(string Name, Sequence<string> Does)
{
    /// <summary>The weekdays on which this painter comes; with no dates either, whenever the bench is open.</summary>
    public Sequence<IsoDayOfWeek> Weekdays { get; init; }

    /// <summary>Single dates on which this painter comes.</summary>
    public Sequence<LocalDate> Dates { get; init; }

    /// <summary>True if this painter sits at the bench in the sittings of a date.</summary>
    public bool Comes(LocalDate date) => (Weekdays.IsEmpty && Dates.IsEmpty) || Weekdays.Contains(date.DayOfWeek) || Dates.Contains(date);
}

/// <summary>A tool or place by its bench name, and how many there are.</summary>
public sealed record BenchTool(string Name, int Count);
