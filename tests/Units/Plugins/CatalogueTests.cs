using Pipeline.Abstractions;

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
            (family.Warmest?.DegreesCelsius ?? 100).Should().BeGreaterThan(family.Coldest?.DegreesCelsius ?? -100, family.Name);
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
}
