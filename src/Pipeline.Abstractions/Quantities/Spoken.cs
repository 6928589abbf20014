using System.Globalization;

namespace Pipeline.Abstractions;

/// <summary>Times as people write them.</summary>
internal static class Spoken
{
    public static string Minutes(double minutes)
    {
        var (value, unit) = Best(minutes);
        return $"{Number(value)} {unit}";
    }

    public static string Range(double low, double high)
    {
        if (low.Equals(high))
            return Minutes(low);
        var (_, unit) = Best(high);
        var (value, lowUnit) = Best(low);
        return lowUnit == unit || low == 0
            ? $"{Number(low / MinutesIn(unit))}–{Number(high / MinutesIn(unit))} {unit}"
            : $"{Number(value)} {lowUnit} – {Minutes(high)}";
    }

    private static (double Value, string Unit) Best(double minutes) => minutes switch
    {
        >= 3 * 1440 => (minutes / 1440, "d"),
        >= 120 => (minutes / 60, "h"),
        _ => (minutes, "min"),
    };

    private static double MinutesIn(string unit) => unit switch { "d" => 1440, "h" => 60, _ => 1 };

    private static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
