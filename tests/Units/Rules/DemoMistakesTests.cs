using Pipeline.Abstractions;

namespace Pipeline.Tests.Units.Rules;

/// <summary>Mistakes that a painter could make with the demo batch, one at a time: each gives exactly its findings.</summary>
public sealed class DemoMistakesTests
{
    private static readonly string Demo = File.ReadAllText(Path.Combine(Golden.Repository, "workflows/tidewater.yaml"));

    [Fact]
    public void Tape_three_hours_after_the_yellow() => FindingsOf(
        ("""
                  with: jib yellow
                  by: airbrush
                  coats: 2
        """, "            at: 2026-12-05 10:00"),
        ("""
                - mask: jib
                  using: low-tack tape
        """, "            at: 2026-12-05 13:30")).Should().Equal("Error mask-too-soon jib");

    [Fact]
    public void Matt_on_the_divers_too() => Told(Demo.Replace(
        """
              - varnish: [metal, kit, glass]
                with: clear w gloss
        """,
        """
              - varnish: [metal, kit, glass]
                with: clear w matt
        """, StringComparison.Ordinal)).Should().BeEquivalentTo(
        "Warning matt-over-metal suit, helmet, lantern, hook arm", "Warning shine-varnished-dull viewports");

    [Fact]
    public void Clear_colour_flooded_straight_on_the_brass() => Told(Demo.Replace(
        """
              - varnish: [metal, kit]
                with: clear l gloss
                by: airbrush
                body: mist
                coats: 2
              - clear-colour: [metal, kit]
                with: whisky tint
                by: airbrush
        """,
        """
              - clear-colour: [metal, kit]
                with: whisky tint
                by: airbrush
                body: heavy
        """, StringComparison.Ordinal)).Should().Equal("Error flakes-dragged suit, helmet, lantern, hook arm");

    [Fact]
    public void The_wash_an_hour_after_sealing() => FindingsOf(
        ("""
                - varnish: [chevrons, load plate]
                  with: clear w gloss
                  by: airbrush
                  body: mist
                  coats: 2
                  overspray: all
        """, "            at: 2026-12-09 19:00"),
        ("""
                - wash: all
                  with: bilge wash
                  by: brush
        """, "            at: 2026-12-09 21:00")).Should().Equal("Error effect-too-soon load plate, chevrons");

    [Fact]
    public void Gloss_in_a_cold_damp_basement() => FindingsOf(
        ("""
                - varnish: all
                  with: clear w gloss
                  by: airbrush
        """, "            climate: { air: 14 °C, humidity: 85 %, surface: 13 °C }"))
        .Should().BeEquivalentTo("Error below-dew-point tower, deck, load plate, jib, stripes, hook, cabin, chevrons", "Warning air-too-damp tower, deck, load plate, jib, stripes, hook, cabin, chevrons");

    // each step, as it stands in the demo, with one more line
    private static IEnumerable<string> FindingsOf(params (string Step, string Line)[] additions)
    {
        var changed = Demo;
        foreach (var (step, line) in additions)
        {
            var found = string.Join('\n', step.Split('\n').Select(each => "  " + each));
            changed.Split(found).Should().HaveCount(2, step);
            changed = changed.Replace(found, found + "\n" + line, StringComparison.Ordinal);
        }

        return Told(changed);
    }

    private static IEnumerable<string> Told(string changed)
    {
        changed.Should().NotBe(Demo);
        return Check.File(changed).Where(finding => finding.Level > Level.Note)
            .Select(finding => $"{finding.Level} {finding.Rule} {string.Join(", ", finding.Areas)}");
    }
}
