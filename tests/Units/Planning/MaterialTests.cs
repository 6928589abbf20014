using System.Globalization;
using CsCheck;
using Pipeline.Abstractions;
using Pipeline.Planning;
using static Pipeline.Tests.Units.Planning.RouteSteps;

namespace Pipeline.Tests.Units.Planning;

public class MaterialTests
{
    private static readonly SurfaceSize Figure = new(36);
    private static readonly SurfaceSize Terrain = new(1100);

    [Fact]
    public void Brass_on_six_figures_is_one_cup()
    {
        var need = PaintNeed.Of(Sprayed(Mix("old brass", Pot("bright brass", Metallic), thinnerPercent: 20)), new SurfaceSize(20), Figure, 6);
        need.Loads.Should().Be(1);
        need.Millilitres.Should().BeApproximately(3.0, 0.05);
    }

    [Fact]
    public void A_crane_takes_several_cups_each_with_its_loss()
    {
        var need = PaintNeed.Of(Sprayed(Mix("jib yellow", Pot("derrick yellow", Waterborne), thinnerPercent: 40), coats: 2), new SurfaceSize(400), Terrain, 1);
        need.OnAndPast.Should().BeApproximately(0.04 * 30 / 0.18 / 0.45, 0.01);
        need.Loads.Should().Be(3);
        need.Millilitres.Should().BeApproximately(need.OnAndPast + 1.5, 1e-9);
    }

    [Fact]
    public void A_cup_is_never_filled_fuller_than_it_should_be()
    {
        for (var area = 1; area < 3000; area += 37)
        {
            var need = PaintNeed.Of(Sprayed(Pot("slate", Lacquer)), new SurfaceSize(area), Terrain, 1);
            (need.Millilitres / need.Loads).Should().BeLessThanOrEqualTo(PaintNeed.CupMillilitres * PaintNeed.CupFill + 1e-9);
        }
    }

    [Fact]
    public void Nothing_painted_takes_no_paint() =>
        PaintNeed.Of(new Layer { Step = 0, Name = "decal", Role = LayerRole.Decal, Drying = Waterborne.Thin }, Figure, Figure, 6).Should().Be(default(PaintNeed));

    [Fact]
    public void A_mist_takes_half_and_a_brushed_coat_has_no_cup()
    {
        var thin = Sprayed(Pot("clear", Waterborne));
        PaintNeed.Of(thin with { Body = Body.Mist }, Figure, Figure, 4).OnAndPast.Should().BeApproximately(PaintNeed.Of(thin, Figure, Figure, 4).OnAndPast / 2, 1e-9);
        PaintNeed.Of(Layer.Of(Pot("boot", Waterborne), LayerRole.Colour, Method.Brush, Body.Heavy), Figure, Figure, 4).Loads.Should().Be(0);
    }

    [Fact]
    public void A_mix_of_mixes_is_taken_apart_to_the_shelf()
    {
        var brass = Mix("old brass", Pot("bright brass", Metallic), thinnerPercent: 50);
        var dark = brass with { Name = "dark brass", Recipe = new Recipe([new RecipePart(brass, 1), new RecipePart(Pot("umber", Lacquer), 1)], null) };
        Mixing.Products(dark, 8).Select(p => (p.Name, p.Millilitres)).Should().Equal(("bright brass", 2.0), ("thinner", 2.0), ("umber", 4.0));
    }

    [Theory]
    [InlineData("1", 40, ShareOf.Mix, "3 : 2")]
    [InlineData("3", 40, ShareOf.Mix, "3 : 2")]
    [InlineData("2 1", 40, ShareOf.Mix, "2 : 1 : 2")]
    [InlineData("1", 50, ShareOf.Mix, "1 : 1")]
    [InlineData("1", 75, ShareOf.Mix, "1 : 3")]
    [InlineData("1", 85, ShareOf.Mix, "2 : 11")]
    [InlineData("1", 90, ShareOf.Mix, "1 : 9")]
    [InlineData("1", 30, ShareOf.Mix, "7 : 3")]
    [InlineData("1", 35, ShareOf.Mix, "9 : 5")]
    [InlineData("1", 70, ShareOf.Paint, "10 : 7")]
    [InlineData("2 1", 30, ShareOf.Paint, "14 : 7 : 6")]
    [InlineData("2", 30, ShareOf.Mix, "7 : 3")]
    [InlineData("7", 30, ShareOf.Mix, "7 : 3")]
    [InlineData("0.5", 30, ShareOf.Mix, "7 : 3")]
    [InlineData("60 40", 50, ShareOf.Mix, "3 : 2 : 5")]
    [InlineData("33 17", 50, ShareOf.Mix, "33 : 17 : 50")]
    [InlineData("0.037", 50, ShareOf.Mix, "0.04 : 0.04")]
    [InlineData("6", 70, ShareOf.Paint, "10 : 7")]
    [InlineData("4 3", 60, ShareOf.Paint, "4 : 3 : 4")]
    [InlineData("1.5 1", 40, ShareOf.Mix, "9 : 6 : 10")]
    [InlineData("1", 1, ShareOf.Mix, "1 : 0.01")]
    public void Parts_that_can_be_counted_out(string paints, double percent, ShareOf of, string said)
    {
        var recipe = new Recipe([.. paints.Split(' ').Select(part => new RecipePart(Pot($"paint {part}", Waterborne), double.Parse(part, CultureInfo.InvariantCulture)))], new Thinning("water", new Share(percent / 100), of));

        var parts = Mixing.Parts(recipe, 12);

        string.Join(" : ", parts.Select(part => part.Parts.ToString(CultureInfo.InvariantCulture))).Should().Be(said);
        parts.Sum(part => part.Millilitres).Should().BeApproximately(12, 0.011, "the measures add up to the mix");
        var thinner = of == ShareOf.Mix ? percent / 100 : percent / (100 + percent);
        parts[^1].Millilitres.Should().BeApproximately(12 * thinner, 0.006, "what is measured is what was asked for");
    }

    [Fact]
    public void The_ratio_decides_and_not_the_figures_it_is_written_in() =>
        Gen.Select(Gen.Int[1, 9], Gen.Int[0, 9], Gen.Int[1, 30], Gen.Int[1, 19]).Sample((one, other, times, twentieths) =>
            Parts(one, other, 1, twentieths).Should().Equal(Parts(one, other, times, twentieths)));

    private static IEnumerable<double> Parts(int one, int other, int times, int twentieths) => Mixing.Parts(
        new Recipe(
            [.. new[] { one, other }.Where(part => part > 0).Select(part => new RecipePart(Pot("moss", Waterborne), part * times))],
            new Thinning("water", new Share(twentieths / 20.0), ShareOf.Mix)),
        12).Select(part => part.Parts);

    [Fact]
    public void Parts_without_thinner_are_said_as_they_are_written()
    {
        var recipe = new Recipe([new RecipePart(Pot("moss", Waterborne), 2.5), new RecipePart(Pot("reed", Waterborne), 1)], null);

        Mixing.Parts(recipe, 7).Select(part => part.Parts).Should().Equal(2.5, 1);
    }

    private static Layer Sprayed(Paint paint, int coats = 1) => Layer.Of(paint, LayerRole.Colour, Method.Airbrush, Body.Thin, coats);
}
