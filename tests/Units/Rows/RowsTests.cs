using Pipeline.Abstractions;
using Pipeline.Tests.Units.Plugins;

namespace Pipeline.Tests.Units.Rows;

/// <summary>
/// The rows of the trade's other tables, cell by cell. All are common practice; that cellulose lacquer blushes above 65 % relative humidity is
/// published in wood-finishing advice, the recoat window of enamel in a refinishing guide on lifting.
/// </summary>
public sealed class RowsTests
{
    [Theory]
    [InlineData("waterborne acrylic", "5–15 min", "15–30 min", "60 min – 2 h", "12–24 h", "24–48 h", "3–7 d")]
    [InlineData("acrylic lacquer", "2–10 min", "10–20 min", "30–60 min", "2–6 h", "12–24 h", "24 h – 3 d")]
    [InlineData("cellulose lacquer", "2–5 min", "10–20 min", "30–60 min", "2–4 h", "12–24 h", "24 h – 3 d")]
    [InlineData("enamel", "60 min – 4 h", "24–48 h", "12–24 h", "48 h – 3 d", "never", "7–14 d")]
    [InlineData("oil", "12–48 h", "24 h – 3 d", "48 h – 3 d", "7–28 d", "never", "7–28 d")]
    [InlineData("alcohol metallic", "1–5 min", "10–15 min", "30–60 min", "12–24 h", "never", "24–48 h")]
    [InlineData("stain", "10–20 min", "30–60 min", "60 min – 2 h", "24–48 h", "24–48 h", "5–7 d")]
    [InlineData("waterborne varnish", "10–20 min", "30–60 min", "2–4 h", "24–48 h", "12–24 h", "3–7 d")]
    [InlineData("lacquer varnish", "5–15 min", "15–30 min", "60 min – 2 h", "6–12 h", "4–12 h", "24 h – 3 d")]
    public void A_thin_sprayed_coat_dries_so(string family, params string[] times) => Times(Row(family).Thin).Should().Equal(times);

    [Theory]
    [InlineData("waterborne acrylic", "10–30 min", "20–60 min", "2–4 h", "24–48 h", "24–48 h", "7–14 d")]
    [InlineData("acrylic lacquer", "5–15 min", "30–60 min", "2–3 h", "8–24 h", "12–24 h", "3–7 d")]
    [InlineData("cellulose lacquer", "5–15 min", "30–60 min", "2–3 h", "8–24 h", "12–24 h", "3–7 d")]
    [InlineData("enamel", "4–8 h", "24 h – 3 d", "24–48 h", "3–5 d", "never", "14–28 d")]
    [InlineData("oil", "24 h – 3 d", "3–7 d", "3–7 d", "60–180 d", "never", "60–180 d")] // it takes months
    [InlineData("alcohol metallic", "2–5 min", "15–30 min", "30–60 min", "12–24 h", "never", "24–48 h")]
    [InlineData("stain", "20–60 min", "60 min – 2 h", "2–4 h", "24–48 h", "24–48 h", "5–7 d")]
    [InlineData("waterborne varnish", "20–40 min", "60 min – 2 h", "4–6 h", "24–48 h", "12–24 h", "3–7 d")]
    [InlineData("lacquer varnish", "10–20 min", "30–60 min", "2–3 h", "6–12 h", "4–12 h", "24 h – 3 d")]
    public void A_brushed_coat_dries_so(string family, params string[] times) => Times(Row(family).Heavy).Should().Equal(times);

    // sealed after 12 to 24 hours, or one to three days: from then on it counts as cured
    [Theory]
    [InlineData("enamel", "60 min – 4 h", "12–24 h", "4–12 h", "never", "never", "12–24 h")]
    [InlineData("oil", "12–48 h", "24 h – 3 d", "48 h – 3 d", "never", "never", "24 h – 3 d")]
    public void A_thin_effect_dries_so(string family, params string[] times) => Times(Row(family).Effect!).Should().Equal(times);

    [Theory]
    [InlineData("waterborne acrylic", "10 °C", "30 °C", "80 %", null, "48 h")]
    [InlineData("stain", "10 °C", "30 °C", "80 %", null, "48 h")]
    [InlineData("waterborne varnish", "10 °C", "30 °C", "80 %", null, "48 h")]
    [InlineData("acrylic lacquer", "10 °C", "30 °C", "75 %", "65 %", null)]
    [InlineData("lacquer varnish", "10 °C", "30 °C", "75 %", "65 %", null)]
    [InlineData("cellulose lacquer", "12 °C", "30 °C", "65 %", null, null)]
    [InlineData("enamel", "10 °C", "30 °C", "80 %", null, null)]
    [InlineData("oil", "10 °C", "30 °C", "80 %", null, null)]
    [InlineData("alcohol metallic", "12 °C", "28 °C", "65 %", null, null)]
    [InlineData("texture paste", "8 °C", "30 °C", "80 %", null, null)]
    [InlineData("pigment fixer", null, null, "80 %", null, null)]
    public void A_family_bears_this_air(string family, string? coldest, string? warmest, string dampest, string? sprayedMatt, string? potLife)
    {
        var row = Row(family);
        new[] { row.Coldest?.ToString(), row.Warmest?.ToString(), row.Dampest.ToString(), row.DampestSprayedMatt?.ToString(), row.PotLife?.ToString() }
            .Should().Equal(coldest, warmest, dampest, sprayedMatt, potLife);
    }

    [Theory]
    [InlineData("waterborne acrylic", "water, acrylic thinner", "water, isopropyl, alkaline cleaner")]
    [InlineData("stain", "water, stain medium", "water, isopropyl, alkaline cleaner")]
    [InlineData("waterborne varnish", "water, acrylic thinner", "water, isopropyl, alkaline cleaner")]
    [InlineData("acrylic lacquer", "lacquer thinner, levelling thinner", "lacquer thinner")]
    [InlineData("lacquer varnish", "lacquer thinner, levelling thinner", "lacquer thinner")]
    [InlineData("cellulose lacquer", "lacquer thinner", "lacquer thinner")]
    [InlineData("enamel", "white spirit, enamel thinner", "white spirit")]
    [InlineData("oil", "white spirit, odourless thinner", "white spirit, soap")]
    [InlineData("alcohol metallic", "isopropyl, alcohol thinner", "isopropyl")]
    [InlineData("texture paste", "water", "water")]
    public void A_family_is_thinned_and_cleaned_with(string family, string thinners, string cleaners)
    {
        var row = Row(family);
        (string.Join(", ", row.Thinners), string.Join(", ", row.Cleaners)).Should().Be((thinners, cleaners));
        foreach (var thinner in row.Thinners)
            AllPlugins.Tables.Thinner(thinner)!.Curdles.Should().NotContain(row.Carrier, $"{thinner} is its own thinner");
    }

    // 0 nothing, 1 softens it if rubbed, 2 lifts it, 3 strips it; dry / cured
    [Theory]
    [InlineData(Liquid.Water, "1/0", "0/0", "0/0", "0/0", "0/0", "0/0", "2/1", "1/0", "0/0", "2/2")]
    [InlineData(Liquid.SoapyWater, "1/0", "0/0", "0/0", "0/0", "0/0", "0/0", "2/1", "1/0", "0/0", "2/2")]
    [InlineData(Liquid.Isopropyl, "3/2", "2/1", "1/1", "1/0", "1/1", "3/3", "3/2", "3/2", "2/1", "2/2")]
    [InlineData(Liquid.WhiteSpirit, "1/0", "0/0", "0/0", "3/2", "3/2", "1/1", "1/0", "0/0", "0/0", "1/1")]
    [InlineData(Liquid.Turpentine, "2/1", "1/1", "1/1", "3/2", "3/2", "1/1", "2/1", "2/1", "1/1", "2/2")]
    [InlineData(Liquid.LacquerThinner, "3/3", "3/3", "3/3", "3/3", "3/3", "3/3", "3/3", "3/3", "3/3", "3/3")]
    [InlineData(Liquid.Acetone, "3/3", "3/3", "3/3", "3/3", "3/3", "3/3", "3/3", "3/3", "3/3", "3/3")]
    [InlineData(Liquid.Debonder, "3/3", "3/3", "3/3", "3/3", "3/3", "3/3", "3/3", "3/3", "3/3", "3/3")]
    [InlineData(Liquid.DecalSetter, "1/0", "0/0", "0/0", "0/0", "0/0", "1/1", "1/1", "0/0", "0/0", "0/0")]
    [InlineData(Liquid.DecalSoftener, "2/1", "1/1", "1/1", "2/1", "2/2", "2/2", "2/1", "1/1", "1/0", "0/0")]
    public void A_liquid_re_wets_so(Liquid liquid, params string[] bites)
    {
        string[] coats =
        [
            "waterborne acrylic", "acrylic lacquer", "cellulose lacquer", "enamel", "oil", "alcohol metallic", "stain", "waterborne varnish", "lacquer varnish",
            "decal film",
        ];
        coats.Select(coat => AllPlugins.Tables.Rewetting(liquid, Row(coat))!).Select(row => $"{(int)row.WhenDry}/{(int)row.WhenCured}").Should().Equal(bites);
    }

    [Theory]
    [InlineData("low-tack tape", DryingState.MaskSafe, "24 h", null, null)]
    [InlineData("standard tape", DryingState.Cured, "24 h", null, null)]
    [InlineData("flexible tape", DryingState.MaskSafe, "24 h", null, null)]
    [InlineData("cut film", DryingState.MaskSafe, "48 h", null, null)]
    [InlineData("liquid mask", DryingState.Cured, "24 h", "48 h", "20–40 min")]
    [InlineData("putty", DryingState.Handleable, "12 h", null, null)]
    [InlineData("cover", DryingState.TouchDry, null, null, null)]
    public void A_mask_asks_for_a_state_and_comes_off_in_time(string mask, DryingState needs, string? timeOn, string? hardLimit, string? sets)
    {
        var row = Bench.MaskOf(mask);
        (row.Needs, row.TimeOn?.ToString(), row.HardLimit?.ToString(), row.Sets?.ToString(), row.Source).Should().Be((needs, timeOn, hardLimit, sets, "common practice"));
    }

    [Theory]
    [InlineData(ToolChange.LightToDark, 1, 3)]
    [InlineData(ToolChange.DarkToLight, 4, 6)]
    [InlineData(ToolChange.FamilyChange, 8, 12)]
    [InlineData(ToolChange.AfterMetallic, 10, 15)]
    [InlineData(ToolChange.EndOfSitting, 10, 15)]
    public void Cleaning_out_takes(ToolChange change, double low, double high)
    {
        var row = AllPlugins.Tables.CleanOut(change)!;
        (row.Low.Minutes, row.High.Minutes, row.Usual.Minutes).Should().Be((low, high, (low + high) / 2));
    }

    [Theory]
    [InlineData("superglue", "5 min", null)]
    [InlineData("foam-safe superglue", "5 min", null)]
    [InlineData("PVA", "2–4 h", null)]
    [InlineData("epoxy", "3–6 h", "12–24 h")]
    [InlineData("styrene cement", "60 min – 2 h", "24 h")]
    [InlineData("epoxy putty", "12–24 h", null)]
    [InlineData("solvent putty", "4–24 h", null)]
    [InlineData("water filler", "60 min – 4 h", null)]
    [InlineData("wet piece", "60 min – 2 h", null)]
    [InlineData("wet porous piece", "12–24 h", null)]
    public void It_sets_in_its_time(string name, string sets, string? sandable)
    {
        var row = AllPlugins.Tables.Setting(name);
        (row.Sets.ToString(), row.Sandable?.ToString()).Should().Be((sets, sandable));
    }

    [Theory]
    [InlineData("dew point margin", "3 °C")]
    [InlineData("far too damp", "10 %")]
    [InlineData("cold from outside", "5 °C")]
    [InlineData("warming up", "2 h")]
    [InlineData("mix to spare", "20 %")]
    [InlineData("fewest drops", "5")]
    [InlineData("thick edge", "3")]
    [InlineData("effect set for good", "24 h")]
    [InlineData("chips within", "24 h")]
    public void A_rule_goes_by(string figure, string value) => AllPlugins.Tables.Figure(figure).Spoken.Should().Be(value);

    private static Family Row(string family) => AllPlugins.Families.Single(each => each.Name == family);

    private static IEnumerable<string> Times(DryingTable table) =>
        Enum.GetValues<DryingState>().Select(state => table.To(state)?.ToString() ?? "never");
}
