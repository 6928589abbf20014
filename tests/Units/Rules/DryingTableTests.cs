using Pipeline.Abstractions;
using Pipeline.Tests.Units.Plugins;

namespace Pipeline.Tests.Units.Rules;

/// <summary>
/// Every drying time of the trade's table, in its three zones: sooner than the low figure is an error, up to nine tenths of the high
/// one a warning, then silence. Figures in hours, common practice, at 20–23 °C and 45–55 %.
/// </summary>
public sealed class DryingTableTests
{
    /// <summary>Family, method, and the low and high figure for recoat, handle, mask and wash; a dash where the state is not reached or another rule speaks.</summary>
    private const string Table = """
        waterborne acrylic | airbrush | 0.25-0.5   | 1-2     | 12-24 | 24-48
        waterborne acrylic | brush    | 0.3333-1   | 2-4     | 24-48 | 24-48
        acrylic lacquer    | airbrush | 0.1667-0.3333 | 0.5-1 | 2-6   | 12-24
        acrylic lacquer    | brush    | 0.5-1      | 2-3     | 8-24  | 12-24
        cellulose lacquer  | airbrush | 0.1667-0.3333 | 0.5-1 | 2-4   | 12-24
        cellulose lacquer  | brush    | 0.5-1      | 2-3     | 8-24  | 12-24
        enamel             | airbrush | 24-48      | 12-24   | 48-72 | -
        enamel             | brush    | 24-72      | 24-48   | 72-120 | -
        oil                | airbrush | 24-72      | 48-72   | 168-672 | -
        oil                | brush    | 72-168     | 72-168  | -     | -
        alcohol metallic   | airbrush | -          | 0.5-1   | 12-24 | -
        stain              | airbrush | 0.5-1      | 1-2     | 24-48 | 24-48
        stain              | brush    | 1-2        | 2-4     | 24-48 | 24-48
        waterborne varnish | airbrush | 0.5-1      | 2-4     | 24-48 | 12-24
        waterborne varnish | brush    | 1-2        | 4-6     | 24-48 | 12-24
        lacquer varnish    | airbrush | 0.25-0.5   | 1-2     | 6-12  | 4-12
        lacquer varnish    | brush    | 0.5-1      | 2-3     | 6-12  | 4-12
        """;

    public static IEnumerable<object[]> Cells() =>
        from line in Table.Split('\n')
        let cells = line.Split('|').Select(cell => cell.Trim()).ToArray()
        from column in new[] { (At: 2, Rule: "recoat-too-soon"), (At: 3, Rule: "handled-too-soon"), (At: 4, Rule: "mask-too-soon"), (At: 5, Rule: "effect-too-soon") }
        where cells[column.At] != "-"
        select new object[] { cells[0], cells[1], column.Rule, cells[column.At] };

    [Theory]
    [MemberData(nameof(Cells))]
    public void Each_time_has_its_three_zones(string family, string method, string rule, string hours)
    {
        var figures = hours.Split('-').Select(figure => Math.Round(double.Parse(figure, System.Globalization.CultureInfo.InvariantCulture) * 60)).ToArray();
        var comfortable = Math.Max(figures[0], Math.Ceiling(figures[1] * 0.9));

        LevelAfter(figures[0] - 1).Should().Be(Level.Error, "sooner than the low figure");
        if (comfortable > figures[0])
            LevelAfter(comfortable - 1).Should().Be(Level.Warning, "between the low figure and nine tenths of the high one");
        LevelAfter(comfortable).Should().BeNull("from nine tenths of the high figure on");

        Level? LevelAfter(double minutes) =>
            Check.File(File(family, method, rule, minutes)).Where(finding => finding.Rule == rule).Select(finding => (Level?)finding.Level).SingleOrDefault();
    }

    [Theory]
    [InlineData("waterborne acrylic")]
    [InlineData("acrylic lacquer")]
    public void Three_coats_in_one_go_take_half_as_long_again_to_bear_tape(string family)
    {
        var low = family == "acrylic lacquer" ? 2 * 60 * 1.5 : 12 * 60 * 1.5;

        Level(low - 1).Should().Be(Abstractions.Level.Error);
        Level(low + 1).Should().Be(Abstractions.Level.Warning);

        Level? Level(double minutes) => Check.File(File(family, "airbrush", "mask-too-soon", minutes, coats: 3))
            .Where(finding => finding.Rule == "mask-too-soon").Select(finding => (Level?)finding.Level).SingleOrDefault();
    }

    // The first step takes a minute from midnight on; the second starts so many minutes after its end.
    private static string File(string family, string method, string rule, double minutes, int coats = 1)
    {
        var start = new DateTime(2026, 12, 1, 0, 0, 0, DateTimeKind.Unspecified);
        // the next coat goes on as soon as it may
        var between = AllPlugins.Families.Single(each => each.Name == family).Thin.Recoatable!.Value.Low.Minutes;
        var then = start.AddMinutes(1 + ((coats - 1) * between) + minutes);
        var second = rule switch
        {
            "recoat-too-soon" => $"coat: hull\n        with: subject\n        by: {method}\n        overspray: all",
            "handled-too-soon" => "photograph: all",
            "mask-too-soon" => "mask: hull\n        using: low-tack tape\n        as: band",
            _ => "wash: hull\n        with: bilge wash\n        stains: yes",
        };
        var verb = family.EndsWith("varnish", StringComparison.Ordinal) ? "varnish" : "coat";
        return $$"""
            batch: Example
            bench: { zone: UTC, sittings: [{ days: mon-sun, from: 00:00, to: 23:59 }] }
            paints:
              ground: { family: acrylic lacquer }
              bilge wash: { family: enamel }
              subject: { family: {{family}}, sheen: satin }
            kits:
            - kit: Example
              models:
              - model: Example
                material: styrene
                areas: { hull: 20 cm² }
                route:
                  - undercoat: all
                    with: ground
                    by: airbrush
                  - {{verb}}: hull
                    with: subject
                    by: {{method}}
                    coats: {{coats}}
                    minutes: 1 min
                    set-up: 0 min
                    at: {{start:yyyy-MM-dd HH:mm}}
                  - {{second}}
                    set-up: 0 min
                    at: {{then:yyyy-MM-dd HH:mm}}
                  {{(rule == "mask-too-soon" ? "- unmask: band" : "")}}
            """;
    }
}
