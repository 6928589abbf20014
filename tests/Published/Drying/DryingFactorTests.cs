using Pipeline.Abstractions;
using Pipeline.Planning;

namespace Pipeline.Tests.Published.Drying;

/// <summary>
/// Water: the vapour-pressure deficit (Dalton's form, quoted from memory) over saturation pressures whose source is checked in
/// <c>Humidity</c>; solvents: the ten-degree rule (Arrhenius near 23 °C, quoted from memory). The values are worked out by hand from both.
/// </summary>
public class DryingFactorTests
{
    [Theory]
    [InlineData(18, 75, 2.72)]
    [InlineData(15, 50, 1.65)]
    [InlineData(10, 50, 2.29)]
    [InlineData(23, 80, 2.50)]
    [InlineData(22, 65, 1.52)]
    [InlineData(30, 40, 0.55)]
    [InlineData(15, 80, 4.00)] // 4.12 by the formula; nothing is promised beyond four times
    [InlineData(35, 10, 0.50)] // kept at half the time
    public void Water_goes_with_the_vapour_pressure_deficit(double air, double humidity, double factor) =>
        DryingFactor.Of(Carrier.Water, In(air, humidity)).Should().BeApproximately(factor, 0.005);

    [Theory]
    [InlineData(18, 1.41)]
    [InlineData(15, 1.74)]
    [InlineData(10, 2.46)]
    [InlineData(30, 0.62)]
    public void Solvents_and_reactions_double_every_ten_degrees(double air, double factor)
    {
        foreach (var carrier in new[] { Carrier.Solvent, Carrier.Alcohol, Carrier.Reaction, Carrier.Spirit })
            DryingFactor.Of(carrier, In(air, 50)).Should().BeApproximately(factor, 0.005);
    }

    [Theory]
    [InlineData(20, 45)]
    [InlineData(20, 55)]
    [InlineData(23, 45)]
    [InlineData(23, 55)]
    [InlineData(21, 50)]
    public void The_usual_figures_hold_in_the_usual_climate(double air, double humidity)
    {
        foreach (var carrier in Enum.GetValues<Carrier>())
            DryingFactor.Of(carrier, In(air, humidity)).Should().Be(1);
    }

    [Fact]
    public void Damp_air_slows_enamel_by_a_quarter_and_lacquer_not_at_all()
    {
        DryingFactor.Of(Carrier.Spirit, In(21, 71)).Should().Be(1.25);
        DryingFactor.Of(Carrier.Spirit, In(21, 70)).Should().Be(1);
        DryingFactor.Of(Carrier.Solvent, In(21, 80)).Should().Be(1);
    }

    [Fact]
    public void Above_ninety_per_cent_no_figure_is_given_for_water()
    {
        DryingFactor.Of(Carrier.Water, In(21, 90)).Should().Be(4);
        DryingFactor.Of(Carrier.Water, In(21, 91)).Should().BeNull();
        DryingFactor.Of(Carrier.Solvent, In(21, 91)).Should().Be(1);
    }

    [Fact]
    public void A_long_wait_takes_the_slower_of_day_and_night_and_a_short_one_the_day()
    {
        var coldNights = new BenchClimate(In(21, 50), In(15, 50));
        DryingFactor.For(Carrier.Water, coldNights, Abstractions.Drying.Hours(4)).Should().Be(1);
        DryingFactor.For(Carrier.Water, coldNights, Abstractions.Drying.Hours(4.1)).Should().BeApproximately(1.65, 0.005);
        var warmNights = new BenchClimate(In(15, 50), In(21, 50));
        DryingFactor.For(Carrier.Water, warmNights, Abstractions.Drying.Hours(20)).Should().BeApproximately(1.65, 0.005);
    }

    private static Climate In(double air, double humidity) => new(new Temperature(air), new Share(humidity / 100));
}
