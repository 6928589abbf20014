using Pipeline.Abstractions;
using Pipeline.Plugins.Basing;
using Pipeline.Plugins.Coats;
using Pipeline.Plugins.Decals;
using Pipeline.Plugins.Finishing;
using Pipeline.Plugins.Masking;
using Pipeline.Plugins.Preparing;
using Pipeline.Plugins.Varnish;
using Pipeline.Plugins.Weathering;
using static Pipeline.Tests.Units.Plugins.Bench;
using Families = Pipeline.Plugins.Coats.Families;

namespace Pipeline.Tests.Units.Plugins;

/// <summary>
/// Attended minutes per unit against what the trade reckons (common practice): a figure of 24–36 cm² and a piece of terrain of
/// about 1,100 cm². Where the trade gives one figure, half a minute either way is the same figure for a figure, a tenth for terrain.
/// </summary>
public sealed class WorkRangeTests
{
    private static readonly Paint Paint = Pot("paint", Families.WaterborneAcrylic);
    private static readonly Paint Metal = Pot("metal", Families.AlcoholMetallic) with { IsMetallic = true };

    private sealed record Row(
        string Step, Verb Verb, object Particulars, double FigureLow, double FigureHigh, double TerrainLow, double TerrainHigh);

    private static readonly Row[] Rows =
    [
        new("clean", new Clean(), new Cleaning(), 1, 2, 3, 3),
        new("cut", new Cut(), new NoParticulars(), 2, 4, 10, 10),
        new("pin", new Pin(), new Pinning(), 3, 6, 5, 5),
        new("dry-fit", new DryFit(), new NoParticulars(), 2, 3, 15, 15),
        new("glue", new GlueUp(), new Gluing(), 3, 6, 30, 45),
        new("undercoat", new Undercoat(), new Undercoating(Paint, Method.Airbrush), 1, 2, 8, 15),
        new("pre-shade", new PreShade(), new PreShading(Paint), 1, 2, 8, 8),
        new("base by airbrush", new Coat(), new Coating(Paint, Method.Airbrush), 1, 3, 10, 20),
        new("base by brush", new Coat(), new Coating(Paint, Method.Brush), 6, 15, 10, 20),
        new("metallic ground", new Coat(), new Coating(Metal, Method.Airbrush), 1, 2, 8, 8),
        new("clear colour in three passes", new ClearColour(), new ClearColouring(Paint, Method.Airbrush, 3), 2, 2, 10, 10),
        new("layer", new Layering(), new Layered(Paint), 8, 30, 15, 15),
        new("filter", new Filter(), new Filtering(Paint), 2, 2, 6, 6),
        new("wash", new Wash(), new Washing(Paint), 2, 5, 15, 15),
        new("panel-line", new PanelLine(), new PanelLining(Paint), 2, 4, 15, 15),
        new("sponge", new SpongeChips(), new Sponging(Paint), 2, 2, 15, 15),
        new("streak", new Streak(), new Streaking(Paint), 3, 3, 15, 15),
        new("soften", new Soften(), new NoParticulars(), 1, 1, 1, 1),
        new("mask with tape", new Mask(), new MaskingOff(MaskOf("low-tack tape")), 5, 15, 20, 40),
        new("mask with film", new Mask(), new MaskingOff(MaskOf("cut film")), 5, 15, 20, 40),
        new("mask with liquid", new Mask(), new MaskingOff(MaskOf("liquid mask")), 2, 4, 6, 6),
        new("mask with putty", new Mask(), new MaskingOff(MaskOf("putty")), 2, 3, 8, 8),
        new("unmask", new Unmask(), new NoParticulars(), 1, 4, 10, 10),
        new("varnish", new Varnish(), new Varnishing(Paint, Method.Airbrush), 1, 2, 8, 12),
        new("texture", new Texture(), new Texturing(), 3, 6, 20, 20),
        new("pigment", new Pigment(), new Pigmenting(), 2, 2, 10, 10),
        new("rim", new Rim(), new Rimming(Paint), 1, 2, 5, 5),
        new("photograph", new Photograph(), new NoParticulars(), 2, 4, 5, 5),
        new("touch-up", new TouchUp(), new TouchingUp(Paint), 2, 5, 10, 10),
    ];

    public static TheoryData<string> Steps => new(Rows.Select(row => row.Step));

    [Theory, MemberData(nameof(Steps))]
    public void A_figure_and_a_piece_of_terrain_take_what_the_trade_reckons(string step)
    {
        var row = Rows.Single(each => each.Step == step);
        foreach (var size in (double[])[24, 30, 36])
            ShouldTake(row, size, row.FigureLow, row.FigureHigh, slack: 0.5);
        ShouldTake(row, 1100, row.TerrainLow, row.TerrainHigh, slack: row.TerrainLow * 0.1);
    }

    [Fact]
    public void Trimming_takes_longer_on_cast_figures_than_on_laser_cut_terrain()
    {
        foreach (var size in (double[])[24, 30, 36])
            Minutes(new Trim(), new Trimming(), "resin", size).Should().BeInRange(4, 10);
        Minutes(new Trim(), new Trimming(), "fibreboard", 1100).Should().BeInRange(4.5, 5.5);
    }

    [Fact]
    public void Filling_and_sanding_together_take_two_to_six_minutes_a_figure_and_ten_on_terrain()
    {
        foreach (var size in (double[])[24, 30, 36])
            Both(size).Should().BeInRange(2, 6);
        Both(1100).Should().BeInRange(9, 11);

        static double Both(double size) =>
            Minutes(new Fill(), new Filling(), "resin", size) + Minutes(new Sand(), new Sanding(), "resin", size);
    }

    [Fact]
    public void A_coat_of_sealer_on_terrain_takes_a_quarter_of_an_hour_and_coats_multiply()
    {
        Minutes(new Seal(), new Sealing(Paint), "fibreboard", 1100).Should().BeInRange(13.5, 16.5);
        Minutes(new Seal(), new Sealing(Paint, Coats: 2), "fibreboard", 1100).Should().BeInRange(27, 33);
    }

    [Fact]
    public void A_decal_takes_four_to_eight_minutes_whatever_it_lies_on()
    {
        Minutes(new Decal(), new Decaling(), "resin", 2).Should().BeInRange(4, 8);
        Minutes(new Decal(), new Decaling(Setter: false), "fibreboard", 400).Should().BeInRange(4, 8);
        Minutes(new Decal(), new Decaling(9), "fibreboard", 400).Should().Be(9 * Minutes(new Decal(), new Decaling(), "fibreboard", 400));
    }

    [Fact]
    public void The_first_load_of_a_sitting_costs_the_eight_minutes_of_an_airbrush_set_up_and_cleaning_is_counted_once()
    {
        var sprayed = new Undercoat().Intend(Six("resin"), new Undercoating(Paint, Method.Airbrush)).Work;
        (sprayed.SetUp + AllPlugins.Tables.CleanOut(ToolChange.GetReady)!.Usual).Minutes.Should().Be(8);
        sprayed.PutAway.Minutes.Should().Be(0, "the clean-out times count it");
    }

    [Fact]
    public void A_larger_area_never_takes_less_time() =>
        CsCheck.Check.Sample(
            CsCheck.Gen.Select(CsCheck.Gen.Int[0, Rows.Length - 1], CsCheck.Gen.Double[0, 5000], CsCheck.Gen.Double[0, 5000]),
            (row, one, other) =>
                Minutes(Rows[row].Verb, Rows[row].Particulars, "resin", Math.Min(one, other))
                <= Minutes(Rows[row].Verb, Rows[row].Particulars, "resin", Math.Max(one, other)));

    private static void ShouldTake(Row row, double squareCentimetres, double low, double high, double slack)
    {
        var single = low.Equals(high) ? slack : 0;
        Minutes(row.Verb, row.Particulars, "resin", squareCentimetres)
            .Should().BeInRange(low - single, high + single, $"{row.Step} on {squareCentimetres} cm²");
    }

    private static double Minutes(Verb verb, object particulars, string material, double squareCentimetres)
    {
        var work = verb.Intend(Of(1, material, squareCentimetres), particulars).Work;
        return work.PerUnit.Minutes * work.Passes;
    }
}
