using System.Globalization;
using Pipeline.Abstractions;
using Pipeline.Tests.Units.Plugins;

namespace Pipeline.Tests.Units.Rows;

/// <summary>
/// New coat over existing (common practice; that strong solvent lifts enamel that has not cured, and the recoat window of enamel, published in
/// a refinishing guide on lifting): the rows, and what a check says of each pair.
/// </summary>
public sealed class CompatibilityTests
{
    private const string Water = "waterborne acrylic, waterborne varnish";
    private const string Hot = "acrylic lacquer, cellulose lacquer, lacquer varnish";

    [Theory]
    [InlineData(Water, Water, "fine / fine")]
    [InlineData(Water, Hot, "fine / fine")]
    [InlineData(Water, "enamel", "never / scuff")]
    [InlineData(Water, "oil", "never / barrier")]
    [InlineData(Water, "alcohol metallic", "fine / fine")]
    [InlineData(Water, "stain", "fine / fine")]
    [InlineData(Hot, Water, "mist from mask-safe / mist")]
    [InlineData(Hot, Hot, "fine / fine")]
    [InlineData(Hot, "enamel", "never / mist")]
    [InlineData(Hot, "oil", "never / barrier")]
    [InlineData(Hot, "alcohol metallic", "mist / mist")]
    [InlineData(Hot, "stain", "mist from mask-safe / mist")]
    [InlineData("enamel, enamel effect", Water, "fine from wash-safe / fine")]
    [InlineData("enamel, enamel effect", Hot, "fine from wash-safe / fine")]
    [InlineData("enamel", "enamel", "fine / scuff")]
    [InlineData("enamel effect", "enamel", "barrier / barrier")]
    [InlineData("enamel", "oil", "never / barrier")]
    [InlineData("enamel effect", "oil", "barrier / barrier")]
    [InlineData("enamel, enamel effect", "alcohol metallic", "barrier / barrier")]
    [InlineData("enamel, enamel effect", "stain", "fine from wash-safe / fine")]
    [InlineData("oil, oil effect", Water, "fine from wash-safe / fine")]
    [InlineData("oil", Hot, "fine / fine")]
    [InlineData("oil effect", Hot, "fine from wash-safe / fine")]
    [InlineData("oil, oil effect", "enamel", "barrier / barrier")]
    [InlineData("oil", "oil", "fine / fine")]
    [InlineData("oil effect", "oil", "barrier / barrier")]
    [InlineData("oil, oil effect", "alcohol metallic", "barrier / barrier")]
    [InlineData("oil, oil effect", "stain", "fine from wash-safe / fine")]
    [InlineData("alcohol metallic", Water, "mist / mist")]
    [InlineData("alcohol metallic", Hot, "fine / fine")]
    [InlineData("alcohol metallic", "enamel", "never / mist")]
    [InlineData("alcohol metallic", "oil", "never / barrier")]
    [InlineData("alcohol metallic", "alcohol metallic", "mist / mist")]
    [InlineData("alcohol metallic", "stain", "never / mist")]
    [InlineData("stain", Water, "fine / fine")]
    [InlineData("stain", Hot, "fine / fine")]
    [InlineData("stain", "enamel", "never / scuff")]
    [InlineData("stain", "oil", "never / barrier")]
    [InlineData("stain", "alcohol metallic", "barrier / barrier")]
    [InlineData("stain", "stain", "fine / fine")]
    public void A_cell_says_how_it_goes_on_dry_and_on_cured_paint(string coats, string unders, string cell)
    {
        foreach (var coat in coats.Split(", "))
        {
            foreach (var under in unders.Split(", "))
            {
                var asEffect = coat.EndsWith(" effect", StringComparison.Ordinal);
                var row = AllPlugins.Tables.Over(Family(coat.Replace(" effect", "", StringComparison.Ordinal)), asEffect, Family(under))!;
                Told(row).Should().Be(cell, $"{coat} over {under}");
                row.Source.Should().StartWith("common practice");
            }
        }
    }

    [Fact]
    public void Every_family_of_paint_has_a_row_for_every_other()
    {
        string[] paints = [.. Water.Split(", "), .. Hot.Split(", "), "enamel", "oil", "alcohol metallic", "stain"];
        var pairs = AllPlugins.Compatibility.Where(row => !row.AsEffect).Select(row => (row.Coat, row.Over)).ToList();
        pairs.Should().OnlyHaveUniqueItems();
        pairs.Should().BeEquivalentTo(from coat in paints from over in paints select (coat, over));
    }

    // what is said of a new coat laid when the one under it is just comfortably dry to recoat, or comfortably cured; two spray it wet and misted
    [Theory]
    [InlineData("waterborne acrylic", "waterborne acrylic", "", "", "", "")]
    [InlineData("waterborne varnish", "acrylic lacquer", "", "", "", "")]
    [InlineData("waterborne acrylic", "enamel", "E fat-over-lean", "E fat-over-lean", "", "")]
    [InlineData("waterborne acrylic", "oil", "E fat-over-lean", "E fat-over-lean", "W fat-over-lean", "W fat-over-lean")]
    [InlineData("waterborne varnish", "oil", "E fat-over-lean", "E fat-over-lean", "", "")]
    [InlineData("waterborne acrylic", "alcohol metallic", "", "", "", "")]
    [InlineData("waterborne acrylic", "stain", "", "", "", "")]
    [InlineData("acrylic lacquer", "waterborne acrylic", "W hot-over-soft", "W hot-over-soft", "W wet-hot-coat", "")]
    [InlineData("lacquer varnish", "waterborne varnish", "W hot-over-soft", "W hot-over-soft", "W wet-hot-coat", "")]
    [InlineData("cellulose lacquer", "acrylic lacquer", "", "", "", "")]
    [InlineData("cellulose lacquer", "enamel", "E hot-over-soft", "E hot-over-soft", "W wet-hot-coat", "")]
    [InlineData("acrylic lacquer", "oil", "E hot-over-soft", "E hot-over-soft", "W wet-hot-coat", "W hot-over-soft")]
    [InlineData("lacquer varnish", "oil", "E hot-over-soft", "E hot-over-soft", "W wet-hot-coat", "")]
    [InlineData("acrylic lacquer", "alcohol metallic", "E flakes-dragged", "", "E flakes-dragged", "")]
    [InlineData("lacquer varnish", "stain", "W hot-over-soft", "W hot-over-soft", "W wet-hot-coat", "")]
    [InlineData("enamel", "waterborne acrylic", "E effect-too-soon", "E effect-too-soon", "", "")]
    [InlineData("enamel", "lacquer varnish", "E effect-too-soon", "E effect-too-soon", "", "")]
    [InlineData("enamel", "enamel", "", "", "", "")]
    [InlineData("enamel", "oil", "E fat-over-lean", "E fat-over-lean", "W fat-over-lean", "W fat-over-lean")]
    [InlineData("enamel", "alcohol metallic", "W effect-without-barrier", "W effect-without-barrier", "W effect-without-barrier", "W effect-without-barrier")]
    [InlineData("enamel", "stain", "E effect-too-soon", "E effect-too-soon", "", "")]
    [InlineData("oil", "waterborne acrylic", "E effect-too-soon", "E effect-too-soon", "", "")]
    [InlineData("oil", "acrylic lacquer", "", "", "", "")]
    [InlineData("oil", "enamel", "W effect-without-barrier", "W effect-without-barrier", "W effect-without-barrier", "W effect-without-barrier")]
    [InlineData("oil", "oil", "", "", "", "")]
    [InlineData("oil", "alcohol metallic", "W effect-without-barrier", "W effect-without-barrier", "W effect-without-barrier", "W effect-without-barrier")]
    [InlineData("alcohol metallic", "waterborne acrylic", "W alcohol-on-soluble", "W alcohol-on-soluble", "W alcohol-on-soluble", "")]
    [InlineData("alcohol metallic", "acrylic lacquer", "", "", "", "")]
    [InlineData("alcohol metallic", "enamel", "E hot-over-soft", "E hot-over-soft", "W wet-hot-coat", "")]
    [InlineData("alcohol metallic", "oil", "E hot-over-soft", "E hot-over-soft", "W wet-hot-coat", "W hot-over-soft")]
    [InlineData("alcohol metallic", "alcohol metallic", "E flakes-dragged", "", "E flakes-dragged", "")]
    [InlineData("alcohol metallic", "stain", "E alcohol-on-soluble", "W alcohol-on-soluble", "W alcohol-on-soluble", "")]
    [InlineData("stain", "waterborne acrylic", "", "", "", "")]
    [InlineData("stain", "cellulose lacquer", "", "", "", "")]
    [InlineData("stain", "enamel", "E fat-over-lean", "E fat-over-lean", "", "")]
    [InlineData("stain", "oil", "E fat-over-lean", "E fat-over-lean", "W fat-over-lean", "W fat-over-lean")]
    [InlineData("stain", "alcohol metallic", "W flakes-dragged", "W flakes-dragged", "W flakes-dragged", "W flakes-dragged")]
    [InlineData("stain", "stain", "", "", "", "")]
    public void A_check_says_what_the_cell_says(string coat, string under, string dryWet, string dryMist, string curedWet, string curedMist)
    {
        Said(coat, under, DryingState.Recoatable, "thin").Should().Be(dryWet, "on dry paint, wet");
        Said(coat, under, DryingState.Recoatable, "mist").Should().Be(dryMist, "on dry paint, misted");
        Said(coat, under, DryingState.Cured, "thin").Should().Be(curedWet, "on cured paint, wet");
        Said(coat, under, DryingState.Cured, "mist").Should().Be(curedMist, "on cured paint, misted");
    }

    [Theory]
    [InlineData("enamel", "waterborne acrylic", "E effect-too-soon", "")]
    [InlineData("enamel", "acrylic lacquer", "E effect-too-soon", "")]
    [InlineData("enamel", "lacquer varnish", "E effect-too-soon", "")]
    [InlineData("enamel", "enamel", "E effect-without-barrier", "E effect-without-barrier")]
    [InlineData("enamel", "oil", "E effect-without-barrier", "E effect-without-barrier")]
    [InlineData("enamel", "alcohol metallic", "W effect-without-barrier", "W effect-without-barrier")]
    [InlineData("enamel", "stain", "E effect-too-soon", "")]
    [InlineData("oil", "waterborne varnish", "E effect-too-soon", "")]
    [InlineData("oil", "cellulose lacquer", "E effect-too-soon", "")]
    [InlineData("oil", "enamel", "E effect-without-barrier", "E effect-without-barrier")]
    [InlineData("oil", "oil", "E effect-without-barrier", "E effect-without-barrier")]
    [InlineData("oil", "alcohol metallic", "W effect-without-barrier", "W effect-without-barrier")]
    public void A_wash_is_judged_by_the_row_of_effects(string wash, string under, string dry, string cured)
    {
        Said(wash, under, DryingState.Recoatable, null).Should().Be(dry, "on dry paint");
        Said(wash, under, DryingState.Cured, null).Should().Be(cured, "on cured paint");
    }

    /// <summary>A row in the words of a file.</summary>
    internal static string Told(CoatOver row) =>
        (row.WhenDry + (row.From == DryingState.Recoatable ? "" : $" from {(row.From == DryingState.MaskSafe ? "mask-safe" : "wash-safe")}") + " / " + row.WhenCured)
            .ToLowerInvariant();

    private static Family Family(string name) => AllPlugins.Families.Single(family => family.Name == name);

    /// <summary>What is said of the second coat. A body of null is a wash by brush.</summary>
    private static string Said(string coat, string under, DryingState state, string? body)
    {
        var since = Family(under).Thin.To(state)!.Value.Comfortable.Minutes + 1;
        return string.Join(", ", Check.File(TwoCoats(coat, under, since, body))
            // that a last varnish waits until all is dry through is another matter
            .Where(finding => finding.Level > Level.Note && finding.Rule != "varnish-too-soon")
            .Select(finding => $"{finding.Level.ToString()[0]} {finding.Rule}").Order(StringComparer.Ordinal));
    }

    /// <summary>One coat of a family and, so many minutes later, another over it.</summary>
    internal static string TwoCoats(string coat, string under, double minutesSince, string? body, string top = "")
    {
        var start = new DateTime(2026, 6, 1, 0, 0, 0, DateTimeKind.Unspecified);
        var then = start.AddMinutes(1 + Math.Ceiling(minutesSince));
        var second = body is null
            ? "wash: hull\n        with: second\n        stains: yes"
            : $"{Verb(coat)}: hull\n        with: second\n        by: airbrush\n        body: {body}";
        return string.Create(CultureInfo.InvariantCulture, $$"""
            batch: Two coats
            {{top}}
            bench: { zone: UTC, sittings: [{ days: mon-sun, from: 00:00, to: 23:59 }] }
            paints:
              ground: { family: acrylic lacquer }
              first: { family: {{under}}, sheen: satin{{Metal(under)}} }
              second: { family: {{coat}}, sheen: satin{{Metal(coat)}} }
            kits:
            - kit: Case
              models:
              - model: Case
                material: styrene
                areas: { hull: 20 cm² }
                route:
                  - undercoat: hull
                    with: ground
                    by: airbrush
                  - {{Verb(under)}}: hull
                    with: first
                    by: airbrush
                    body: {{(under == "alcohol metallic" ? "mist" : "thin")}}
                    minutes: 1 min
                    set-up: 0 min
                    at: {{start:yyyy-MM-dd HH:mm}}
                  - {{second}}
                    set-up: 0 min
                    at: {{then:yyyy-MM-dd HH:mm}}
            """);
    }

    private static string Verb(string family) => family.EndsWith("varnish", StringComparison.Ordinal) ? "varnish" : "coat";

    private static string Metal(string family) => family == "alcohol metallic" ? ", metallic: yes" : "";
}
