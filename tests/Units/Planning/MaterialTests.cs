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

    private static Layer Sprayed(Paint paint, int coats = 1) => Layer.Of(paint, LayerRole.Colour, Method.Airbrush, Body.Thin, coats);
}
