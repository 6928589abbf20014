using Pipeline.Abstractions;
using Pipeline.Plugins.Preparing;

namespace Pipeline.Tests.Units.Plugins;

/// <summary>The tables of the trade, checked for the shape any such table has, and for the rows the other plugins rely on.</summary>
public sealed class CatalogueTests
{
    [Fact]
    public void The_families_masks_and_materials_a_file_can_name() =>
        AllPlugins.Families.Select(row => row.Name)
            .Concat(AllPlugins.MaskMaterials.Select(row => row.Name))
            .Concat(AllPlugins.Materials.Select(row => row.Name))
            .Should().BeEquivalentTo(
                "waterborne acrylic", "acrylic lacquer", "cellulose lacquer", "enamel", "oil", "alcohol metallic", "stain",
                "waterborne varnish", "lacquer varnish", "decal film", "texture paste", "pigment fixer",
                "low-tack tape", "standard tape", "flexible tape", "cut film", "liquid mask", "putty", "cover",
                "resin", "printed resin", "styrene", "metal", "brass", "pvc", "fibreboard", "wood", "plaster", "cork", "card", "foam");

    [Theory]
    [InlineData("waterborne acrylic", "15–30 min", "20–60 min", "12–24 h", "24–48 h")]
    [InlineData("acrylic lacquer", "10–20 min", "30–60 min", "2–6 h", "8–24 h")]
    [InlineData("cellulose lacquer", "10–20 min", "30–60 min", "2–4 h", "8–24 h")]
    [InlineData("enamel", "24–48 h", "24 h – 3 d", "48 h – 3 d", "3–5 d")]
    [InlineData("oil", "24 h – 3 d", "3–7 d", "7–28 d", "60–180 d")]
    [InlineData("alcohol metallic", "10–15 min", "15–30 min", "12–24 h", "12–24 h")]
    [InlineData("stain", "30–60 min", "60 min – 2 h", "24–48 h", "24–48 h")]
    [InlineData("waterborne varnish", "30–60 min", "60 min – 2 h", "24–48 h", "24–48 h")]
    [InlineData("lacquer varnish", "15–30 min", "30–60 min", "6–12 h", "6–12 h")]
    public void Times_to_recoat_and_to_mask_thin_and_heavy(
        string family, string thinRecoat, string heavyRecoat, string thinMask, string heavyMask)
    {
        var row = AllPlugins.Families.Single(each => each.Name == family);
        new[] { row.Thin.Recoatable, row.Heavy.Recoatable, row.Thin.MaskSafe, row.Heavy.MaskSafe }
            .Select(time => time.ToString()).Should().Equal(thinRecoat, heavyRecoat, thinMask, heavyMask);
    }

    [Fact]
    public void A_heavy_coat_is_never_dry_before_a_thin_one()
    {
        foreach (var family in AllPlugins.Families)
        {
            foreach (var state in Enum.GetValues<DryingState>())
            {
                (family.Thin.To(state) is null).Should().Be(family.Heavy.To(state) is null, $"{family.Name} {state}");
                if (family.Thin.To(state) is not { } thin || family.Heavy.To(state) is not { } heavy)
                    continue;
                heavy.Low.Should().BeGreaterThanOrEqualTo(thin.Low, $"{family.Name} {state}");
                heavy.High.Should().BeGreaterThanOrEqualTo(thin.High, $"{family.Name} {state}");
            }
        }
    }

    [Fact]
    public void No_coat_is_recoatable_before_it_is_touch_dry_or_cured_before_it_is_handleable()
    {
        foreach (var family in AllPlugins.Families)
        {
            foreach (var table in (DryingTable[])[family.Thin, family.Heavy])
            {
                table.Recoatable!.Value.Low.Should().BeGreaterThanOrEqualTo(table.TouchDry!.Value.Low, family.Name);
                table.Cured!.Value.High.Should().BeGreaterThanOrEqualTo(table.Handleable!.Value.High, family.Name);
            }
        }
    }

    [Fact]
    public void Only_enamel_and_oil_and_alcohol_metal_are_never_ready_for_enamel_effects() =>
        AllPlugins.Families.Where(family => family.Thin.WashSafe is null).Select(family => family.Name)
            .Should().BeEquivalentTo("enamel", "oil", "alcohol metallic");

    [Fact]
    public void Each_family_has_a_span_of_temperature_and_damp_to_be_laid_in()
    {
        foreach (var family in AllPlugins.Families)
        {
            family.Warmest.Should().BeGreaterThan(family.Coldest, family.Name);
            family.Dampest.Fraction.Should().BeInRange(0.4, 0.95, family.Name);
            (family.DampestSprayedMatt ?? family.Dampest).Should().BeLessThanOrEqualTo(family.Dampest, family.Name);
        }
    }

    [Fact]
    public void Material_that_dissolves_softens_too_and_printed_resin_is_cured_before_paint()
    {
        AllPlugins.Materials.Where(row => row.DissolvesInSolvent).Should().OnlyContain(row => row.SoftensInSolvent);
        AllPlugins.Materials.Where(row => row.NeedsPostCure).Select(row => row.Name).Should().Equal("printed resin");
        AllPlugins.Materials.Where(row => row.BareColour == Level.Error).Select(row => row.Name)
            .Should().BeEquivalentTo("resin", "printed resin", "metal", "brass");
    }

    [Theory]
    [InlineData("low-tack tape", DryingState.MaskSafe, "24 h", null)]
    [InlineData("standard tape", DryingState.Cured, "24 h", null)]
    [InlineData("flexible tape", DryingState.MaskSafe, "24 h", null)]
    [InlineData("cut film", DryingState.MaskSafe, "48 h", null)]
    [InlineData("liquid mask", DryingState.Cured, "24 h", "48 h")]
    [InlineData("putty", DryingState.Handleable, "12 h", null)]
    public void Masks_ask_for_a_state_and_come_off_in_time(string mask, DryingState needs, string timeOn, string? hardLimit)
    {
        var row = Bench.MaskOf(mask);
        row.Needs.Should().Be(needs);
        row.TimeOn.ToString().Should().Be(timeOn);
        row.HardLimit?.ToString().Should().Be(hardLimit);
    }

    [Fact]
    public void Cleaning_out_costs_more_the_further_the_next_load_is_away()
    {
        var row = AllPlugins.CleanOuts.Should().ContainSingle().Subject;
        Attended[] times = [row.SameLoad, row.LightToDark, row.DarkToLight, row.FamilyChange, row.AfterMetallic];
        times.Select(time => time.Minutes).Should().Equal(0, 2, 5, 10, 12.5);
        row.EndOfSitting.Minutes.Should().Be(12.5);
    }

    [Theory]
    [InlineData(Glue.Superglue, "5 min", null)]
    [InlineData(Glue.FoamSafeSuperglue, "5 min", null)]
    [InlineData(Glue.Pva, "2–4 h", null)]
    [InlineData(Glue.Epoxy, "3–6 h", "12–24 h")]
    [InlineData(Glue.StyreneCement, "60 min – 2 h", "24 h")]
    public void Glues_set_in_their_time(Glue glue, string works, string? sandable)
    {
        var row = Glues.Of(glue);
        row.Works.ToString().Should().Be(works);
        row.Sandable?.ToString().Should().Be(sandable);
        row.Source.Should().Be("common practice");
    }
}
