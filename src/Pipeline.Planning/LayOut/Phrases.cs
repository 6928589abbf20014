using System.Globalization;
using NodaTime;
using NodaTime.Text;
using Pipeline.Abstractions;

namespace Pipeline.Planning;

/// <summary>Times and steps as a painter says them.</summary>
internal static class Phrases
{
    private static readonly ZonedDateTimePattern TimePattern = ZonedDateTimePattern.CreateWithInvariantCulture("HH':'mm", null);
    private static readonly LocalDatePattern DayPattern = LocalDatePattern.CreateWithInvariantCulture("ddd d MMM");
    private static readonly ZonedDateTimePattern MomentPattern = ZonedDateTimePattern.CreateWithInvariantCulture("ddd d MMM HH':'mm", null);
    private static readonly ZonedDateTimePattern YearPattern = ZonedDateTimePattern.CreateWithInvariantCulture("ddd d MMM uuuu HH':'mm", null);

    /// <summary>A moment with its year: <c>Sat 5 Dec 2026 14:30</c>.</summary>
    public static string MomentAndYear(ZonedDateTime moment) => YearPattern.Format(moment);

    /// <summary>A date: <c>Sat 5 Dec</c>.</summary>
    public static string Day(LocalDate date) => DayPattern.Format(date);

    /// <summary>A moment in the bench's zone: <c>Sat 5 Dec 14:30</c>; <c>Sun 31 Oct 02:30 CEST</c> where the clock shows that twice.</summary>
    public static string Moment(Instant instant, DateTimeZone zone) => MomentPattern.Format(instant.InZone(zone)) + TwiceShown.Which(instant.InZone(zone));

    /// <summary>A moment said on the same day as another: the time alone, or with its date.</summary>
    public static string Moment(Instant instant, Instant near, DateTimeZone zone) =>
        instant.InZone(zone).Date == near.InZone(zone).Date ? TimePattern.Format(instant.InZone(zone)) + TwiceShown.Which(instant.InZone(zone)) : Moment(instant, zone);

    /// <summary>A length of time: <c>45 min</c>, <c>2 h 30 min</c>, <c>22 h</c>, <c>3 d 4 h</c>.</summary>
    public static string Duration(double minutes)
    {
        var whole = (long)Math.Round(minutes, MidpointRounding.AwayFromZero);
        var (days, hours, rest) = (whole / 1440, whole % 1440 / 60, whole % 60);
        return whole switch
        {
            < 120 => Number(whole, "min"),
            < 3 * 1440 => Join(Number(whole / 60, "h"), rest == 0 ? "" : Number(rest, "min")),
            _ => Join(Number(days, "d"), hours == 0 ? "" : Number(hours, "h")),
        };
    }

    /// <summary>
    /// How long something takes, as a person says it: up to the next five minutes below two hours, quarter of an hour below eight, half an hour
    /// below three days, else hour. Never shorter than it is, and "about" where it is not the very figure: nine tenths of 24 h is <c>about 22 h</c>.
    /// </summary>
    public static string About(double minutes)
    {
        var step = minutes switch { <= 120 => 5, <= 480 => 15, <= 3 * 1440 => 30, _ => 60 };
        var round = Math.Ceiling((minutes - 0.25) / step) * step;
        return minutes < step || Math.Abs(round - minutes) < 0.5 ? Duration(minutes) : $"about {Duration(round)}";
    }

    /// <summary>A low and a high figure: <c>12–24 h</c>; one figure if they are the same.</summary>
    public static string Range(double lowMinutes, double highMinutes) => DryingRange.Minutes(lowMinutes, Math.Max(lowMinutes, highMinutes)).ToString();

    /// <summary>A step by its verb and what it acts on: <c>coat the suit and helmet</c>, <c>unmask discs</c>.</summary>
    public static string Step(Model model, Step step)
    {
        var mask = step.Deeds.OfType<Deed.PutMaskOn>().Select(d => d.Mask).Concat(step.Deeds.OfType<Deed.TakeMaskOff>().Select(d => d.Mask)).ToList();
        if (step.Kind == StepKind.Removal && mask.Count > 0)
            return $"{step.Verb} {Listed(mask)}";
        if (step.Deeds.OfType<Deed.Join>().FirstOrDefault() is { Parts.IsEmpty: false } join)
            return $"{step.Verb} {Listed(join.Parts)}";
        return step.Areas.IsEmpty ? step.Verb : $"{step.Verb} {Areas(model, step.Areas)}";
    }

    /// <summary>A step as one of its tasks: <c>'coat the suit'</c>; of several coats that dry between <c>coat 2 of 'coat the suit'</c>.</summary>
    /// <param name="model">Whose.</param>
    /// <param name="step">The step.</param>
    /// <param name="pass">Which of its passes, from 0.</param>
    public static string Task(Model model, Step step, int pass) =>
        step.Work.Passes == 1 ? $"'{Step(model, step)}'" : string.Create(CultureInfo.InvariantCulture, $"coat {pass + 1} of '{Step(model, step)}'");

    /// <summary>Which of several coats: <c>coat 2 of 3</c>; empty for a step that is done in one go.</summary>
    /// <param name="step">The step.</param>
    /// <param name="pass">Which of its passes, from 0.</param>
    public static string Coat(Step step, int pass) =>
        step.Work.Passes == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $"coat {pass + 1} of {step.Work.Passes}");

    /// <summary>Areas as they are said: <c>all areas</c>, <c>the suit</c>, <c>the suit, helmet and hoses</c>.</summary>
    public static string Areas(Model model, IReadOnlyCollection<string> areas)
    {
        if (model.Areas.Count > 1 && areas.Count == model.Areas.Count)
            return "all areas";
        return areas.Count > 4 && model.Areas.Count - areas.Count <= 2
            ? $"all but the {Listed([.. model.Areas.Select(a => a.Name).Where(name => !areas.Contains(name))])}"
            : $"the {Listed(areas)}";
    }

    /// <summary>Names in a row: <c>suit, helmet and hoses</c>.</summary>
    public static string Listed(IReadOnlyCollection<string> names) => names.Count switch
    {
        0 => "",
        1 => names.First(),
        _ => $"{string.Join(", ", names.Take(names.Count - 1))} and {names.Last()}",
    };

    /// <summary>Which pieces of a lot: <c>no. 2 of 4</c>, <c>no. 1-4 of 4</c>; empty for a single piece.</summary>
    public static string Units(int first, int count, int of) =>
        of == 1 ? ""
        : count == 1 ? string.Create(CultureInfo.InvariantCulture, $"no. {first} of {of}")
        : string.Create(CultureInfo.InvariantCulture, $"no. {first}-{first + count - 1} of {of}");

    /// <summary>So many things: <c>1 coat</c>, <c>2 coats</c>.</summary>
    public static string Counted(long count, string thing) => string.Create(CultureInfo.InvariantCulture, $"{count} {thing}{(count == 1 ? "" : "s")}");

    /// <summary>With a capital at its beginning.</summary>
    public static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];

    private static string Number(long value, string unit) => string.Create(CultureInfo.InvariantCulture, $"{value} {unit}");

    private static string Join(string first, string second) => second.Length == 0 ? first : $"{first} {second}";
}
