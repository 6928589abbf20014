namespace Pipeline.Abstractions;

/// <summary>
/// Water in air. The Magnus form over water with the coefficients recommended by the World Meteorological Organization
/// (6.112 hPa, 17.62, 243.12 °C), valid from −45 to +60 °C. The coefficients belong together; no other set is mixed in.
/// </summary>
public static class HumidAir
{
    private const double SaturationAtZeroHectopascals = 6.112;
    private const double Slope = 17.62;
    private const double OffsetDegreesCelsius = 243.12;

    // drier than this no bench is, and the logarithm of nothing has no value
    private const double DriestFraction = 0.001;

    /// <summary>The pressure of water vapour in saturated air, in hPa.</summary>
    public static double SaturationHectopascals(Temperature air) =>
        SaturationAtZeroHectopascals * Math.Exp(Slope * air.DegreesCelsius / (OffsetDegreesCelsius + air.DegreesCelsius));

    /// <summary>The temperature at which the air's water begins to condense. Air drier than 0.1 % counts as 0.1 %.</summary>
    public static Temperature DewPoint(Temperature air, Share humidity)
    {
        var gamma = Math.Log(Math.Max(humidity.Fraction, DriestFraction)) + (Slope * air.DegreesCelsius / (OffsetDegreesCelsius + air.DegreesCelsius));
        return new Temperature(Math.Clamp(OffsetDegreesCelsius * gamma / (Slope - gamma), -90, 100));
    }

    /// <summary>How much faster water leaves a film at 23 °C and 50 % than in this air: the ratio of the vapour-pressure deficits (Dalton).</summary>
    /// <returns>More than zero; infinite in saturated air.</returns>
    public static double EvaporationFactor(Temperature air, Share humidity)
    {
        var standard = 0.5 * SaturationHectopascals(new Temperature(23));
        return standard / ((1 - humidity.Fraction) * SaturationHectopascals(air));
    }
}
