using System.Globalization;

namespace Pipeline.Workflows;

/// <summary>Numbers as people write them: plain digits with a decimal point, whatever the language of the machine.</summary>
internal static class NumberText
{
    /// <summary>Beyond this many digits nobody measures paint.</summary>
    private const int MostDigits = 12;

    /// <summary>A number of zero or more, without a unit.</summary>
    public static Written<double> Number(string text, double most)
    {
        var (number, unit) = Parted(text);
        if (Amount(number, text) is { Wrong: not null } not)
            return not;
        if (unit.Length > 0)
            return Written<double>.Not($"‘{Shown(text)}’ is not a plain number.");
        return Within(Amount(number, text).Value, most, text);
    }

    /// <summary>A whole number from one figure to another.</summary>
    public static Written<int> Whole(string text, int least, int most)
    {
        var number = Number(text, double.MaxValue);
        if (number.Wrong is not null)
            return Written<int>.Not(number.Wrong);
        if (number.Value != Math.Floor(number.Value))
            return Written<int>.Not($"‘{Shown(text)}’ is not a whole number.");
        return number.Value < least || number.Value > most
            ? Written<int>.Not(string.Create(CultureInfo.InvariantCulture, $"‘{Shown(text)}’ is not from {least:N0} to {most:N0}."))
            : Written<int>.Says((int)number.Value);
    }

    /// <summary>A number with its unit, in the smallest unit's measure.</summary>
    /// <param name="text">As written.</param>
    /// <param name="of">What is measured: <c>a volume</c>.</param>
    /// <param name="most">The largest that makes sense, in the base unit.</param>
    /// <param name="factor">The unit's size in the base unit, or null if it is no such unit.</param>
    public static Written<double> Amount(string text, string of, double most, Func<string, double?> factor)
    {
        var (number, unit) = Parted(text);
        var amount = Amount(number, text);
        if (amount.Wrong is not null)
            return amount;
        if (unit.Length == 0)
            return Written<double>.Not($"‘{Shown(text)}’ has no unit.");
        if (HasExponent(unit))
            return Written<double>.Not($"‘{Shown(text)}’ does not begin with a number in plain digits.");
        return factor(unit) is { } times
            ? Within(amount.Value * times, most, text)
            : Written<double>.Not($"‘{Shown(unit)}’ is no unit of {of}.");
    }

    /// <summary>The digits of a text, the number before its unit.</summary>
    public static Written<double> Amount(string number, string text)
    {
        if (string.IsNullOrWhiteSpace(text))
            return Written<double>.Not("Nothing is written here.");
        if (number.Length == 0)
            return Written<double>.Not(text[0] is '-' or '−' ? $"‘{Shown(text)}’ is less than nothing." : $"‘{Shown(text)}’ does not begin with a number in plain digits.");
        if (number.Contains(',', StringComparison.Ordinal))
            return Written<double>.Not($"‘{Shown(text)}’ has a comma in its number; the decimal sign is a point, and thousands are not parted.");
        if (number.Length > MostDigits)
            return Written<double>.Not($"‘{Shown(text)}’ has more digits than anybody measures.");
        return number[^1] != '.' && number[0] != '.' && double.TryParse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value)
            ? Written<double>.Says(value)
            : Written<double>.Not($"‘{Shown(number)}’ is not a number in plain digits.");
    }

    /// <summary>The number a text begins with, and the unit after it.</summary>
    public static (string Number, string Unit) Parted(string text)
    {
        var end = 0;
        while (end < text.Length && (char.IsAsciiDigit(text[end]) || text[end] is '.' or ','))
            end++;
        return (text[..end], end == text.Length ? "" : text[end..].Trim());
    }

    /// <summary>True if what follows the digits is a power of ten: no unit of the trade begins so.</summary>
    public static bool HasExponent(string unit) => unit.Length > 1 && unit[0] is 'e' or 'E' && (char.IsAsciiDigit(unit[1]) || unit[1] is '+' or '-');

    /// <summary>A value as it may stand in a message: never longer than a line.</summary>
    public static string Shown(string text) => text.Length <= 60 ? text : text[..60] + "…";

    private static Written<double> Within(double value, double most, string text) => value <= most
        ? Written<double>.Says(value)
        : Written<double>.Not($"‘{Shown(text)}’ is more than any bench sees.");
}
