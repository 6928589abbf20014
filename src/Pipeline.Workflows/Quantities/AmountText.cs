using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Amounts as people write them, each with its unit.</summary>
internal static class AmountText
{
    /// <summary>What to write for a size.</summary>
    public const string SizeExpected = "a size such as 30 cm² (units cm², mm², m²)";

    /// <summary>What to write for a volume.</summary>
    public const string VolumeExpected = "a volume such as 40 mL (units mL, L)";

    /// <summary>What to write for a share.</summary>
    public const string ShareExpected = "a share such as 40 %, from 0 % to 100 %";

    /// <summary>What to write for a temperature.</summary>
    public const string TemperatureExpected = "a temperature such as 19 °C (units °C, °F), from -90 °C to 100 °C";

    /// <summary>Sizes of areas that are not measured; defaults, common practice, in cm².</summary>
    public static readonly (string Name, double SquareCentimetres, string Means)[] SizeClasses =
    [
        ("tiny", 1, "a lens, a buckle"),
        ("small", 4, "a hand, a lantern"),
        ("medium", 15, "a coat, a base top"),
        ("large", 40, "a whole figure"),
        ("huge", 200, "a small vehicle, a wall"),
        ("terrain", 600, "a terrain piece as large as a hand and higher"),
    ];

    public static Written<SurfaceSize> Size(string text) => NumberText.Amount(text, "surface", 1e6, unit => unit switch
    {
        "cm²" or "cm2" => 1,
        "mm²" or "mm2" => 0.01,
        "m²" or "m2" => 10_000,
        _ => null,
    }).To(value => new SurfaceSize(value));

    /// <summary>A size, or a class of size.</summary>
    public static Written<SurfaceSize> SizeOrClass(string text)
    {
        foreach (var (name, squareCentimetres, _) in SizeClasses)
        {
            if (name == text)
                return Written<SurfaceSize>.Says(new SurfaceSize(squareCentimetres));
        }

        return Size(text);
    }

    public static Written<Volume> Volume(string text) => NumberText.Amount(text, "volume", 100_000, unit => unit switch
    {
        "mL" or "ml" => 1,
        "L" or "l" => 1000,
        _ => null,
    }).To(value => new Volume(value));

    public static Written<Share> Share(string text)
    {
        var share = NumberText.Amount(text, "a share", 1e9, unit => unit == "%" ? 0.01 : null);
        if (share.Wrong is not null)
            return Written<Share>.Not(share.Wrong);
        return share.Value <= 1 ? Written<Share>.Says(new Share(share.Value)) : Written<Share>.Not($"‘{NumberText.Shown(text)}’ is more than the whole.");
    }

    public static Written<Temperature> Temperature(string text)
    {
        var isBelowZero = text.Length > 0 && text[0] is '-' or '−';
        var sign = isBelowZero ? -1 : 1;
        var (number, unit) = NumberText.Parted(isBelowZero ? text[1..] : text);
        var amount = NumberText.Amount(number, isBelowZero && number.Length > 0 ? text[1..] : text);
        if (amount.Wrong is not null)
            return Written<Temperature>.Not(amount.Wrong);
        double? celsius = unit switch
        {
            "°C" => sign * amount.Value,
            "°F" => (sign * amount.Value - 32) * 5 / 9,
            _ => null,
        };
        return celsius switch
        {
            null when unit.Length == 0 => Written<Temperature>.Not($"‘{NumberText.Shown(text)}’ has no unit."),
            null => Written<Temperature>.Not($"‘{NumberText.Shown(unit)}’ is no unit of temperature."),
            >= -90 and <= 100 => Written<Temperature>.Says(new Temperature(celsius.Value)),
            _ => Written<Temperature>.Not($"‘{NumberText.Shown(text)}’ is not a temperature of any bench."),
        };
    }
}
