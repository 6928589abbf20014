using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Rows;

/// <summary>What a file says of a table counts before what the trade says, is read as strictly as all else, and is known as the file's.</summary>
public sealed class FileRowsTests
{
    [Theory]
    [InlineData("lacquer over enamel that has cured", "acrylic lacquer", "enamel", 14.0, "W wet-hot-coat", "compatibility: { acrylic lacquer: { enamel: { cured: fine } } }", "")]
    [InlineData("stain over lacquer", "stain", "acrylic lacquer", 1.0, "", "compatibility: { stain: { acrylic lacquer: { dry: never, cured: never } } }", "E fat-over-lean")]
    [InlineData("water-based over lacquer", "waterborne acrylic", "acrylic lacquer", 2.0, "", "compatibility: { waterborne acrylic: { acrylic lacquer: { from: cured } } }", "W effect-too-soon")]
    [InlineData("an old name of the family", "acrylic lacquer", "enamel", 14.0, "W wet-hot-coat", "compatibility: { lacquer: { alkyd: { cured: fine } } }", "")]
    [InlineData("a family of one's own has its model's rows", "ship red", "enamel", 14.0, "W wet-hot-coat", "families: { ship red: { like: acrylic lacquer } }", "W wet-hot-coat")]
    [InlineData("and may have its own", "ship red", "enamel", 14.0, "W wet-hot-coat", "families: { ship red: { like: acrylic lacquer } }\ncompatibility: { ship red: { enamel: { cured: fine } } }", "")]
    public void Compatibility(string @case, string coat, string under, double days, string before, string top, string after)
    {
        Said(coat == "ship red" ? "acrylic lacquer" : coat, under, days, "").Should().Be(before, @case);
        Said(coat, under, days, top).Should().Be(after, @case);

        static string Said(string coat, string under, double days, string top) => Levels(CompatibilityTests.TwoCoats(coat, under, days * 24 * 60, "thin", top));
    }

    [Fact]
    public void Effects_have_rows_of_their_own()
    {
        Levels(CompatibilityTests.TwoCoats("enamel", "enamel", 20 * 1440, null)).Should().Be("E effect-without-barrier");
        Levels(CompatibilityTests.TwoCoats("enamel", "enamel", 20 * 1440, null, "compatibility: { enamel: { enamel: { cured: fine } } }")).Should().Be("E effect-without-barrier");
        Levels(CompatibilityTests.TwoCoats("enamel", "enamel", 20 * 1440, null, "compatibility: { enamel effect: { enamel: { dry: fine, cured: fine } } }")).Should().Be("");
    }

    private const string WipedWithTurpentine = """
        - undercoat: hull
          with: slate undercoat
          by: airbrush
        - coat: hull
          with: derrick yellow
          by: airbrush
          at: 2026-12-01 09:00
        - clean: hull
          with: turpentine
          at: 2026-12-02 12:00
        """;

    private const string MaskedForThirtyHours = """
        - undercoat: all
          with: slate undercoat
          by: airbrush
          at: 2026-12-01 09:00
        - mask: hull
          using: low-tack tape
          as: band
          at: 2026-12-02 09:00
        - coat: lens
          with: derrick yellow
          by: brush
          at: 2026-12-03 09:00
        - unmask: band
          at: 2026-12-03 15:00
        """;

    private const string UndercoatHoursAfterTheFiller = """
        - fill: hull
          using: water filler
          at: 2026-12-01 09:00
        - sand: hull
          wet: no
          at: 2026-12-01 14:00
        - undercoat: hull
          with: slate undercoat
          by: airbrush
          at: 2026-12-01 15:00
        """;

    private const string WipedBackAfterThirtyHours = """
        - undercoat: hull
          with: slate undercoat
          by: airbrush
          at: 2026-11-20 09:00
        - varnish: hull
          with: clear l gloss
          by: airbrush
          at: 2026-11-25 09:00
        - streak: hull
          with: kelp streak
          at: 2026-12-01 09:00
        - clean-back: hull
          with: white spirit
          at: 2026-12-02 15:00
        """;

    private const string SprayedInDampAir = """
        - undercoat: hull
          with: slate undercoat
          by: airbrush
          climate: { air: 21 °C, humidity: 72 %, surface: 21 °C }
        """;

    [Theory]
    [InlineData(WipedBackAfterThirtyHours, "E effect-has-set", "figures: { effect set for good: 2 d }", "W effect-has-set")]
    [InlineData(SprayedInDampAir, "W air-too-damp", "figures: { Far-too-damp: 5 % }", "E air-too-damp")]
    [InlineData(SprayedInDampAir, "W air-too-damp", "figures: { dew point margin: 6 °C }", "E below-dew-point, W air-too-damp")]
    [InlineData(WipedWithTurpentine, "W liquid-attacks-coat", "re-wetting: { turpentine: { waterborne acrylic: { dry: softens } } }", "")]
    [InlineData(WipedWithTurpentine, "W liquid-attacks-coat", "re-wetting: { turpentine: { waterborne acrylic: { dry: strips, cured: strips } } }", "E liquid-attacks-coat")]
    [InlineData(MaskedForThirtyHours, "W mask-on-too-long", "mask-materials: { low-tack tape: { time-on: 2 d } }", "")]
    [InlineData(MaskedForThirtyHours, "W mask-on-too-long", "mask-materials: { low-tack tape: { time-on: any } }", "")]
    [InlineData(MaskedForThirtyHours, "W mask-on-too-long", "mask-materials: { low-tack tape: { hard-limit: 26 h } }", "E mask-on-too-long")]
    [InlineData(MaskedForThirtyHours, "W mask-on-too-long", "mask-materials: { low-tack tape: { time-on: 2 d, needs: cured } }", "W mask-too-soon")]
    [InlineData(UndercoatHoursAfterTheFiller, "", "setting: { water filler: 6-12 h }", "E filler-too-soon, E filler-too-soon")]
    public void Other_tables(string route, string before, string top, string after)
    {
        Said("").Should().Be(before);
        Said(top).Should().Be(after);

        string Said(string top) => Levels(Around(route, top));
    }

    [Theory]
    [InlineData(MaskedForThirtyHours, "", "mask-on-too-long", "at most 24 h (a usual figure, not the label's)")]
    [InlineData(MaskedForThirtyHours, "mask-materials: { low-tack tape: { time-on: 20 h } }", "mask-on-too-long", "at most 20 h (as the label or the file says)")]
    [InlineData(UndercoatHoursAfterTheFiller, "setting: { water filler: 6-12 h }", "filler-too-soon", "filler cured takes 6–12 h (as the label or the file says)")]
    [InlineData(UndercoatHoursAfterTheFiller, "setting: { epoxy: 1 h }", null, "")]
    public void A_finding_says_whose_figure_it_goes_by(string route, string top, string? rule, string says)
    {
        var findings = Check.File(Around(route, top)).Where(finding => finding.Level > Level.Note).ToList();
        if (rule is null)
            findings.Should().BeEmpty();
        else
            findings.Should().NotBeEmpty().And.OnlyContain(finding => finding.Rule == rule && finding.Message.Contains(says));
    }

    private static string Around(string route, string top) => Prelude.Text.Replace("paints:\n", $"{top}\npaints:\n", StringComparison.Ordinal)
        + Indented("material: styrene\nareas: { hull: 20 cm², lens: 2 cm² }\nroute:\n" + route);

    [Fact]
    public void A_mask_material_of_ones_own() => Levels(Prelude.Text.Replace("paints:\n", "mask-materials: { harbour tape: { like: low-tack tape, time-on: 2 d } }\npaints:\n", StringComparison.Ordinal)
        + Indented("material: styrene\nareas: { hull: 20 cm², lens: 2 cm² }\nroute:\n" + MaskedForThirtyHours.Replace("low-tack tape", "harbour tape", StringComparison.Ordinal))).Should().Be("");

    [Theory]
    [InlineData("resin", "", "E paint-on-unwashed")]
    [InlineData("resin", "materials: { resin: { wash-first: no } }", "")]
    [InlineData("cast resin", "materials: { resin: { wash-first: no } }", "")]
    [InlineData("harbour resin", "materials: { harbour resin: { like: resin } }", "E paint-on-unwashed")]
    [InlineData("harbour resin", "materials: { harbour resin: { like: resin, wash-first: no } }", "")]
    public void Materials(string material, string top, string said) => Levels(Prelude.Text.Replace("paints:\n", $"{top}\npaints:\n", StringComparison.Ordinal)
        + Indented($"material: {material}\nareas: {{ hull: 20 cm² }}\nroute:\n- undercoat: hull\n  with: slate undercoat\n  by: brush")).Should().Be(said);

    [Theory]
    [InlineData("blue cap", "", "")]
    [InlineData("blue cap", "thinners: { blue cap: { like: white spirit } }", "E mix-of-families")]
    [InlineData("blue cap", "thinners: { blue cap: { carrier: solvent, curdles: [water, alcohol] } }", "E mix-of-families")]
    [InlineData("enamel thinner", "", "E mix-of-families")]
    [InlineData("enamel thinner", "thinners: { enamel thinner: { curdles: [alcohol] } }", "")]
    [InlineData("enamel thinner", "families: { waterborne acrylic: { thinners: [water, enamel thinner] } }", "")]
    public void Thinners(string thinner, string top, string said) => Levels(Prelude.Text
        .Replace("paints:\n", $"{top}\nmixes: {{ brew: {{ parts: {{ derrick yellow: 2 }}, thinner: {{ with: {thinner}, share: 30 %, of: mix }} }} }}\npaints:\n", StringComparison.Ordinal)
        + Indented("material: styrene\nareas: { hull: 20 cm² }\nroute:\n- undercoat: hull\n  with: slate undercoat\n  by: brush")).Should().Be(said);

    [Fact]
    public void Clean_outs_and_where_they_come_from()
    {
        var batch = Bound("clean-outs: { dark-to-light: 2-4 min }");
        batch.Tables.CleanOut(ToolChange.DarkToLight).Should().Be(new CleanOutTime(ToolChange.DarkToLight, new Attended(2), new Attended(4), "the file"));
        batch.Tables.CleanOut(ToolChange.FamilyChange)!.Source.Should().Be("common practice");
    }

    [Theory]
    [InlineData("compatability: {}", "‘compatability’ is no key of a workflow. Did you mean ‘compatibility’?")]
    [InlineData("compatibility: { enamle: { oil: { dry: fine } } }", "There is no family called ‘enamle’. Did you mean ‘enamel’?")]
    [InlineData("compatibility: { enamel efect: { oil: { dry: fine } } }", "There is no family called ‘enamel efect’. Did you mean ‘enamel effect’?")]
    [InlineData("compatibility: { enamel: { oli: { dry: fine } } }", "There is no family called ‘oli’. Did you mean ‘oil’?")]
    [InlineData("compatibility: { enamel: { oil: { wet: fine } } }", "‘wet’ is no key of one coat over another. Known keys: dry, from, cured, note.")]
    [InlineData("compatibility: { enamel: { oil: { dry: allowed } } }", "‘allowed’ is none of the choices. Write fine, scuff, mist, barrier or never.")]
    [InlineData("compatibility: { enamel: { oil: { from: soon } } }", "‘soon’ is none of the choices. Write touch-dry, recoatable, handleable, mask-safe, wash-safe or cured.")]
    [InlineData("compatibility: { enamel: fine }", "Here stands a text. Write families of coats under it, such as { enamel: { cured: fine } }.")]
    [InlineData("compatibility: { enamel: { oil: { dry: fine }, oil paint: { dry: mist } } }", "‘enamel over oil’ is given twice. Keep one of the two.")]
    [InlineData("re-wetting: { isopropil: { enamel: { dry: lifts } } }", "There is no liquid called ‘isopropil’. Did you mean ‘isopropyl’?")]
    [InlineData("re-wetting: { isopropyl: { enamel: { dry: eats } } }", "‘eats’ is none of the choices. Write nothing, softens, lifts or strips.")]
    [InlineData("re-wetting: { alkaline cleaner: { enamel: { dry: lifts } } }", "‘alkaline cleaner on enamel’ has no ‘cured’. Add ‘cured: ’ and one of nothing, softens, lifts or strips.")]
    [InlineData("mask-materials: { low-tak tape: { time-on: 12 h } }", "There is no mask material called ‘low-tak tape’. Did you mean ‘low-tack tape’?")]
    [InlineData("mask-materials: { low-tack tape: { time-on: 12 } }", "‘12’ has no unit. Write a time such as 90 min, 2 h, 1 h 30 min or 3 d, or any.")]
    [InlineData("mask-materials: { low-tack tape: { like: putty } }", "‘low-tack tape’ is a mask material of the trade already. Leave ‘like’ out to change its figures, or give the new material another name.")]
    [InlineData("mask-materials: { liquid mask: { time-on: 3 d } }", "The hard limit of 48 h comes before the time on of 3 d. Give a ‘hard-limit’ that is no shorter than ‘time-on’.")]
    [InlineData("materials: { rezin: { porous: no } }", "There is no material called ‘rezin’. Did you mean ‘resin’?")]
    [InlineData("materials: { harbour resin: { like: rezin } }", "There is no material called ‘rezin’. Did you mean ‘resin’?")]
    [InlineData("materials: { resin: { warps-above: 45 } }", "‘45’ has no unit. Write a temperature such as 19 °C (units °C, °F), from -90 °C to 100 °C, or any.")]
    [InlineData("materials: { resin: { bare-color: error } }", "‘bare-color’ is no key of a material. Did you mean ‘bare-colour’?")]
    [InlineData("materials: { resin: { like: metal } }", "‘resin’ is a material of the trade already. Leave ‘like’ out to change its facts, or give the new material another name.")]
    [InlineData("clean-outs: { dark-to-lite: 4 min }", "‘dark-to-lite’ is no key of clean-outs. Did you mean ‘dark-to-light’?")]
    [InlineData("clean-outs: { dark-to-light: 4 }", "‘4’ has no unit. Write minutes such as 5 min, or a range such as 4-6 min.")]
    [InlineData("thinners: { blue cap: { like: whit spirit } }", "There is no thinner called ‘whit spirit’. Did you mean ‘white spirit’?")]
    [InlineData("thinners: { blue cap: { curdles: water } }", "‘blue cap’ has no ‘carrier’. Add ‘carrier: ’ and one of none, water, solvent, spirit, alcohol or reaction.")]
    [InlineData("setting: { PAV: 1 h }", "There is no glue or filler called ‘PAV’. Did you mean ‘PVA’?")]
    [InlineData("setting: { PVA: { set: 1 h } }", "‘set’ is no key of a setting time. Did you mean ‘sets’?")]
    [InlineData("figures: { warmin up: 3 h }", "There is no figure called ‘warmin up’. Did you mean ‘warming up’?")]
    [InlineData("figures: { warming up: 3 }", "‘3’ has no unit. Write a time such as 90 min, 2 h, 1 h 30 min or 3 d.")]
    [InlineData("figures: { dew point margin: 3 °F }", "‘°F’ is no unit of a difference of temperature. Write degrees such as 3 °C.")]
    [InlineData("figures: { far too damp: 10 }", "‘10’ has no unit. Write a share such as 10 %.")]
    [InlineData("figures: { thick edge: three }", "‘three’ does not begin with a number in plain digits. Write a number such as 3.")]
    public void A_mistake_is_told_like_any_other(string top, string told)
    {
        var binding = Bind(top);
        binding.Findings.Where(finding => finding.Level == Level.Error).Select(finding => $"{finding.Message} {finding.Remedy}").Should().Equal(told);
        binding.Batch.Should().BeNull();
    }

    private static Batch Bound(string top) => Bind(top).Batch!;

    private static Binding Bind(string top) => Binder.Bind(
        [Reader.Read(new SourceText("case.yaml", Prelude.Text.Replace("paints:\n", $"{top}\npaints:\n", StringComparison.Ordinal)
            + Indented("material: styrene\nareas: { hull: 20 cm² }\nroute:\n- clean: hull"))).Tree!],
        Check.Trade);

    private static string Indented(string model) => string.Join('\n', model.Split('\n').Select(line => new string(' ', 8) + line));

    private static string Levels(string file) => string.Join(", ", Check.File(file)
        .Where(finding => finding.Level > Level.Note)
        .Select(finding => $"{finding.Level.ToString()[0]} {finding.Rule}").Order(StringComparer.Ordinal));
}
