using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Lengths of time as people write them: <c>90 min</c>, <c>1 h 30 min</c>, <c>3 d</c>, and ranges such as <c>12-24 h</c>.</summary>
internal static class DurationText
{
    /// <summary>What to write for a time.</summary>
    public const string Expected = "a time such as 90 min, 2 h, 1 h 30 min or 3 d";

    /// <summary>What to write for a drying time.</summary>
    public const string RangeExpected = "a time such as 12 h, or a range such as 12-24 h";

    /// <summary>Ten years: longer than any paint dries.</summary>
    private const double MostMinutes = 3650 * 1440;

    /// <summary>Time in minutes.</summary>
    public static Written<double> Minutes(string text)
    {
        var whole = text.Trim();
        var (total, last, rest) = (0.0, double.MaxValue, whole);
        while (true)
        {
            var (number, tail) = NumberText.Parted(rest);
            var amount = NumberText.Amount(number, rest);
            if (amount.Wrong is not null)
                return amount;
            if (NumberText.HasExponent(tail))
                return Written<double>.Not($"‘{NumberText.Shown(whole)}’ does not begin with a number in plain digits.");
            var end = 0;
            while (end < tail.Length && char.IsLetter(tail[end]))
                end++;
            var unit = tail[..end];
            if (unit.Length == 0)
                return Written<double>.Not(tail.Length == 0 ? $"‘{NumberText.Shown(whole)}’ has no unit." : $"‘{NumberText.Shown(whole)}’ is not a time.");
            if (MinutesIn(unit) is not { } factor)
                return Written<double>.Not($"‘{NumberText.Shown(unit)}’ is no unit of time.");
            if (factor >= last)
                return Written<double>.Not($"‘{NumberText.Shown(whole)}’ does not go from the larger unit to the smaller.");
            (total, last, rest) = (total + amount.Value * factor, factor, tail[end..].Trim());
            if (total > MostMinutes)
                return Written<double>.Not($"‘{NumberText.Shown(whole)}’ is longer than any paint dries.");
            if (rest.Length == 0)
                return Written<double>.Says(total);
        }
    }

    public static Written<Attended> Attended(string text) => Minutes(text).To(minutes => new Attended(minutes));

    /// <summary>Minutes, whose unit may be left out because the key is called so.</summary>
    public static Written<Attended> PlainMinutes(string text) => text.Length > 0 && NumberText.Parted(text).Unit.Length == 0
        ? NumberText.Number(text, MostMinutes).To(minutes => new Attended(minutes))
        : Attended(text);

    public static Written<Drying> Drying(string text) => Minutes(text).To(minutes => new Drying(minutes));

    public static Written<DryingRange> Range(string text)
    {
        var dash = text.AsSpan().IndexOfAny('-', '–');
        if (dash <= 0)
            return Minutes(text).To(minutes => DryingRange.Exactly(new Drying(minutes)));
        var (low, high) = (text[..dash].Trim(), text[(dash + 1)..].Trim());
        var highest = Minutes(high);
        if (highest.Wrong is not null)
            return Written<DryingRange>.Not(highest.Wrong);
        if (NumberText.Parted(low).Unit.Length == 0)
            low += " " + NumberText.Parted(high).Unit;
        var lowest = Minutes(low);
        if (lowest.Wrong is not null)
            return Written<DryingRange>.Not(lowest.Wrong);
        return lowest.Value <= highest.Value
            ? Written<DryingRange>.Says(DryingRange.Minutes(lowest.Value, highest.Value))
            : Written<DryingRange>.Not($"‘{NumberText.Shown(text)}’ goes from the longer time to the shorter.");
    }

    private static double? MinutesIn(string unit) => unit switch
    {
        "s" or "seconds" => 1.0 / 60,
        "min" or "minute" or "minutes" => 1,
        "h" or "hour" or "hours" => 60,
        "d" or "day" or "days" => 1440,
        _ => null,
    };
}
