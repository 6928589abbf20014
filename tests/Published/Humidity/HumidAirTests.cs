using Pipeline.Abstractions;

namespace Pipeline.Tests.Published.Humidity;

/// <summary>The humid-air formulas against published tables.</summary>
public sealed class HumidAirTests
{
    /// <summary>
    /// Saturation vapour pressure over water, kPa: Handbook of Chemistry and Physics, 1992–93, vapour pressure of water.
    /// The Magnus form agrees with it within 0.3 %.
    /// </summary>
    [Theory]
    [InlineData(0, 0.61129)]
    [InlineData(5, 0.8726)]
    [InlineData(10, 1.2281)]
    [InlineData(15, 1.7056)]
    [InlineData(20, 2.3388)]
    [InlineData(25, 3.1690)]
    [InlineData(30, 4.2455)]
    [InlineData(40, 7.3814)]
    public void Saturation_pressure_agrees_with_the_handbook(double degreesCelsius, double kilopascals)
    {
        var hectopascals = HumidAir.SaturationHectopascals(new Temperature(degreesCelsius));

        (hectopascals / 10).Should().BeApproximately(kilopascals, kilopascals * 0.003);
    }

    /// <summary>Dew points of the table that coating inspectors carry, to 0.15 °C.</summary>
    [Theory]
    [InlineData(20, 50, 9.3)]
    [InlineData(20, 55, 10.7)]
    [InlineData(20, 60, 12.0)]
    [InlineData(25, 50, 13.8)]
    [InlineData(25, 60, 16.7)]
    [InlineData(30, 50, 18.4)]
    [InlineData(30, 60, 21.4)]
    [InlineData(16, 50, 5.6)]
    [InlineData(22, 60, 13.8)]
    public void Dew_point_agrees_with_the_coating_inspectors_table(double degreesCelsius, double percent, double dewPoint)
    {
        var found = HumidAir.DewPoint(new Temperature(degreesCelsius), new Share(percent / 100));

        found.DegreesCelsius.Should().BeApproximately(dewPoint, 0.15);
    }

    [Fact]
    public void Saturated_air_is_at_its_dew_point()
    {
        foreach (var degrees in new double[] { -20, 0, 13.7, 40 })
            HumidAir.DewPoint(new Temperature(degrees), new Share(1)).DegreesCelsius.Should().BeApproximately(degrees, 1e-9);
    }

    [Fact]
    public void Bone_dry_air_still_has_a_dew_point() =>
        HumidAir.DewPoint(new Temperature(20), new Share(0)).DegreesCelsius.Should().BeLessThan(-50);
}
