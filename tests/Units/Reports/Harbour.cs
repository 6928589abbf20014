using System.Globalization;
using NodaTime;
using NodaTime.Text;
using Pipeline.Abstractions;
using Pipeline.Planning;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Reports;

/// <summary>Hand-made plans of a salvage crew in a drowned harbour, in the shape the planner gives them.</summary>
internal static class Harbour
{
    private static readonly LocalDateTimePattern Pattern = LocalDateTimePattern.CreateWithInvariantCulture("uuuu d MMM HH':'mm");

    public static DateTimeZone Zone { get; } = DateTimeZoneProviders.Tzdb["Europe/Lisbon"];

    public static Caution Dust { get; } = new(
        "harmful-dust",
        "The dust harms lungs. Work resin wet and wipe up; fibreboard dry, with extraction and a particle respirator that fits. The safety data sheet says which.");

    public static Caution Mist { get; } = new(
        "spray-mist",
        "Spray with extraction to the outside and breathing protection that suits the product. Check label and safety data sheet.");

    /// <summary>A moment in 2026: <c>4 Dec 19:05</c>.</summary>
    public static ZonedDateTime At(string moment) => Pattern.Parse("2026 " + moment).Value.InZoneStrictly(Zone);

    /// <summary>A date in 2026: <c>4 Dec</c>.</summary>
    public static LocalDate On(string date) => At(date + " 12:00").Date;

    /// <summary>A sitting: <c>4 Dec 19:00-21:00</c>.</summary>
    public static PlannedSitting Sitting(string when, params PlannedTask[] tasks)
    {
        var (from, to) = Span(when);
        return new PlannedSitting
        {
            Painter = "Inês",
            From = from,
            To = to,
            TakeOut = [],
            Mixes = [],
            Tasks = tasks.ToSequence(),
            Drying = [],
            MasksOn = [],
            Cautions = [],
            DayMinutes = (int)(to.ToInstant() - from.ToInstant()).TotalMinutes,
            AttendedMinutes = (int)tasks.Sum(t => (t.To.ToInstant() - t.From.ToInstant()).TotalMinutes),
        };
    }

    /// <summary>A task on some units of a model: <c>4 Dec 19:00-19:30</c>, <c>Line diver 1-3/3</c>.</summary>
    public static PlannedTask Task(string when, string units, string words, string why = "Nobody sits at the bench earlier, or not for long enough.")
    {
        var (from, to) = Span(when);
        var (model, first, last, of) = Units(units);
        return new PlannedTask
        {
            Id = string.Create(CultureInfo.InvariantCulture, $"{model.Replace(' ', '-').ToLowerInvariant()}/{from.Day}{from.Hour:00}{from.Minute:00}/{first}"),
            Sort = TaskSort.Step,
            From = from,
            To = to,
            Verb = words.Split(' ')[0].ToLowerInvariant(),
            Model = model,
            Kit = model.Contains("diver", StringComparison.Ordinal) ? "Salvage divers" : "Slipway",
            FirstUnit = first,
            Units = last - first + 1,
            OfUnits = of,
            Areas = ["all"],
            Words = words,
            Step = words.ToLowerInvariant(),
            ExactStart = from.ToInstant(),
            ExactEnd = to.ToInstant(),
            ExactWorkStart = from.ToInstant(),
            ExactWorkEnd = to.ToInstant(),
            WhyNotEarlier = why,
            FollowsOn = why.StartsWith("The hands are busy", StringComparison.Ordinal),
        };
    }

    /// <summary>Cleaning the airbrush out at the end of a sitting.</summary>
    public static PlannedTask CloseDown(string when, string held)
    {
        var task = Task(when, "none 0-0/0", $"Clean the airbrush out and put it away (it held {held})", "A tool is cleaned at the end of the sitting in which it was used.");
        return task with { Id = $"close-down/{when}", Sort = TaskSort.CloseDown, Step = "", Verb = "", Model = "", Kit = "", FirstUnit = 0, Units = 0, OfUnits = 0, Areas = [], Tool = "airbrush" };
    }

    /// <summary>A day made of its sittings.</summary>
    public static PlannedDay Day(params PlannedSitting[] sittings) => new(sittings[0].From.Date, sittings.ToSequence());

    /// <summary>A wait by the family's usual figure.</summary>
    public static WaitStarted Until(string @for, string earliest, string comfortable, bool isDefault = true) => new(@for, At(earliest), At(comfortable), isDefault);

    /// <summary>A plan in which nothing happens; tests fill in what they are about.</summary>
    public static Plan Empty { get; } = new()
    {
        Batch = "Tidewater salvage crew",
        Zone = Zone,
        From = At("30 Nov 18:00"),
        Pace = Pace.Comfortable,
        Days = [],
        Finishes = [],
        Masks = [],
        Shopping = [],
        Findings = [],
        Measure = new PlanMeasure(0, 0, 0, At("30 Nov 18:00"), 0, IsBestAsParted: false, CleanOuts: 0, StoppedEarly: false),
        CriticalChain = [],
        Assumptions = [],
    };

    private static (ZonedDateTime From, ZonedDateTime To) Span(string when)
    {
        var times = when.Split('-');
        var from = At(times[0]);
        var to = At($"{when[..when.LastIndexOf(' ')]} {times[1]}");
        return (from, to.ToInstant() < from.ToInstant() ? to.Plus(Duration.FromDays(1)) : to);
    }

    private static (string Model, int First, int Last, int Of) Units(string units)
    {
        var space = units.LastIndexOf(' ');
        var numbers = units[(space + 1)..].Split('-', '/').Select(n => int.Parse(n, CultureInfo.InvariantCulture)).ToList();
        return (units[..space], numbers[0], numbers[1], numbers[2]);
    }
}
