using Pipeline.Abstractions;
using Pipeline.Planning;

namespace Pipeline.Tests.Published.Drying;

/// <summary>
/// The spreading-rate formulas of coating data sheets (rate in m²/L = volume solids in % × 10 / dry film in µm; wet film = dry film × 100 /
/// volume solids in %) with values worked in published spreading-rate notes and tables; the medicine dropper of USP general chapter 1101.
/// </summary>
public class SpreadingTests
{
    [Theory]
    [InlineData(50, 25, 20)]
    [InlineData(60, 100, 6.0)]
    [InlineData(45, 75, 6.0)]
    [InlineData(71, 125, 5.68)]
    public void Spreading_rate(double solidsPercent, double dryFilm, double squareMetresPerLitre) =>
        Spreading.SquareMetresPerLitre(solidsPercent / 100, dryFilm).Should().BeApproximately(squareMetresPerLitre, 0.005);

    [Fact]
    public void Wet_film() => Spreading.WetFilmMicrometres(125, 0.71).Should().BeApproximately(176, 0.5);

    [Fact]
    public void A_need_is_the_area_over_the_spreading_rate()
    {
        // 1 m² at 20 m²/L takes 50 mL when nothing is lost
        Spreading.Millilitres(10_000, 25, 0.50, 1).Should().BeApproximately(50, 1e-9);
    }

    // Worked by hand from the same formula: 120 cm² at 5 µm, 8 % solids, 30 % on the piece; 400 cm² at 20 µm, 18 %, 45 %.
    [Theory]
    [InlineData(120, 5, 0.08, 0.30, 2.5)]
    [InlineData(400, 20, 0.18, 0.45, 9.88)]
    public void What_leaves_the_cup(double squareCentimetres, double dryFilm, double solids, double efficiency, double millilitres) =>
        Spreading.Millilitres(squareCentimetres, dryFilm, solids, efficiency).Should().BeApproximately(millilitres, 0.01);

    [Fact]
    public void Thinning_thins_the_solids() => Spreading.Thinned(0.30, 0.40).Should().BeApproximately(0.18, 1e-12);

    // USP 1101: held upright the dropper gives 20 drops of water of 0.9 to 1.1 g in all: 45 to 55 mg a drop.
    [Fact]
    public void Twenty_drops_of_the_dropper_are_a_millilitre()
    {
        (1000.0 / PaintNeed.DropsPerMillilitre).Should().BeInRange(45, 55);
        var recipe = new Recipe([new RecipePart(Pot("ochre"), 1)], null);
        Mixing.Parts(recipe, 1.5).Single().Drops.Should().Be(30);
    }

    // "30 % thinner": of the mix 70:30, of the paint 100:30. With 10 mL of paint that is 4.29 mL against 3.00 mL.
    [Theory]
    [InlineData(ShareOf.Mix, 4.29)]
    [InlineData(ShareOf.Paint, 3.00)]
    public void Both_readings_of_a_thinner_share(ShareOf of, double thinnerMillilitres)
    {
        var recipe = new Recipe([new RecipePart(Pot("ochre"), 10)], new Thinning("thinner", new Share(0.30), of));
        Mixing.ThinnerParts(recipe).Should().BeApproximately(thinnerMillilitres, 0.005);
        var parts = Mixing.Parts(recipe, 10 + Mixing.ThinnerParts(recipe));
        parts[0].Millilitres.Should().BeApproximately(10, 0.01);
        parts[1].Millilitres.Should().BeApproximately(thinnerMillilitres, 0.01);
    }

    private static Paint Pot(string name)
    {
        var table = new DryingTable(null, null, null, null, null, null);
        var family = new Family { Name = "waterborne acrylic", Carrier = Carrier.Water, Thin = table, Heavy = table, Source = "the case" };
        return new Paint { Name = name, Place = new Place("case", 1, 1), Family = family, Thin = table, Heavy = table, Effect = table };
    }
}
