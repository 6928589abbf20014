using Pipeline.Abstractions;

namespace Pipeline.Planning;

/// <summary>
/// How many times longer than at the standard climate something takes to dry at the bench.
/// <list type="bullet">
/// <item>Water: first-stage evaporation goes with the vapour-pressure deficit (Dalton's form), so the factor is the deficit at 23 °C and
/// 50 % over the deficit at the bench, kept between 0.5 and 4. Inside 20–23 °C and 45–55 % it is 1. Above 90 % nothing is promised.</item>
/// <item>Solvents and reactions: the ten-degree rule, 2^((23 − T) / 10); inside 20–23 °C it is 1, since humidity has no part in it.</item>
/// <item>Spirit (enamels, oils): the same, and a quarter more above 70 % (common practice).</item>
/// </list>
/// </summary>
public static class DryingFactor
{
    /// <summary>Above this relative humidity water leaves a film too slowly for any figure to be given.</summary>
    public const double DampestFraction = 0.9;

    /// <summary>Waits longer than this, at the standard climate, last into the night.</summary>
    public static Drying Overnight { get; } = Drying.Hours(4);

    /// <summary>The factor in one climate, or null where no figure can be given: water in air above 90 %.</summary>
    public static double? Of(Carrier carrier, Climate climate)
    {
        ArgumentNullException.ThrowIfNull(climate);
        return carrier switch
        {
            Carrier.Water => OfWater(climate),
            Carrier.Solvent or Carrier.Alcohol or Carrier.Reaction => ByTemperature(climate),
            Carrier.Spirit => ByTemperature(climate) * (climate.Humidity.Fraction > 0.7 ? 1.25 : 1),
            _ => 1,
        };
    }

    /// <summary>
    /// The factor for a wait of some length. One of more than four hours counts as overnight and takes the slower of day and night,
    /// a shorter one takes the day's.
    /// </summary>
    /// <param name="carrier">What leaves the film.</param>
    /// <param name="climate">The bench by day and by night.</param>
    /// <param name="comfortable">How long the wait is at the standard climate.</param>
    /// <returns>The factor, or null where no figure can be given.</returns>
    public static double? For(Carrier carrier, BenchClimate climate, Drying comfortable)
    {
        ArgumentNullException.ThrowIfNull(climate);
        var day = Of(carrier, climate.Day);
        if (!(comfortable > Overnight))
            return day;
        var night = Of(carrier, climate.Night);
        return day is { } d && night is { } n ? Math.Max(d, n) : null;
    }

    private static double? OfWater(Climate climate)
    {
        var humidity = climate.Humidity.Fraction;
        if (humidity > DampestFraction)
            return null;
        var isStandard = IsStandardTemperature(climate) && humidity is >= 0.45 and <= 0.55;
        return isStandard ? 1 : Math.Clamp(HumidAir.EvaporationFactor(climate.Air, climate.Humidity), 0.5, 4);
    }

    private static double ByTemperature(Climate climate) =>
        IsStandardTemperature(climate) ? 1 : Math.Pow(2, (23 - climate.Air.DegreesCelsius) / 10);

    private static bool IsStandardTemperature(Climate climate) => climate.Air.DegreesCelsius is >= 20 and <= 23;
}
