using Pipeline.Abstractions;
using Pipeline.Reports;
using Pipeline.Surfaces;

namespace Pipeline.Tests.Units.Reports;

/// <summary>A step explained: the surfaces before and after it, and what each rule made of it.</summary>
public sealed class WhyTextTests
{
    private const string Model = """
        material: styrene
        areas: { hull: 20 cm², lens: 2 cm², deck: 6 cm² }
        route:
          - undercoat: all
            with: slate undercoat
            by: airbrush
          - mask: lens
            using: low-tack tape
            as: discs
          - coat: [hull, deck]
            with: derrick yellow
            by: airbrush
            coats: 2
          - unmask: discs
          - varnish: hull
            with: clear w gloss
            by: brush
          - decal: [hull, deck]
            allow: { no-gloss-under-decal: "a dull one is wanted" }
          - clean-back: hull
            with: white spirit
        """;

    [Fact]
    public void A_coat_shows_its_layer_on_what_lay_there()
    {
        var text = Told(2);

        text.Should().Contain("coat hull and deck").And.Contain("step 3 of 7");
        text.Should().MatchRegex(@"(?m)^ +1  slate undercoat +acrylic lacquer +matt +undercoat +airbrush, thin$");
        text.Should().MatchRegex(@"(?m)^ +\+ +2  derrick yellow +waterborne +satin +colour +airbrush, thin,$");
    }

    [Fact]
    public void Spray_over_a_masked_area_lies_on_the_mask() =>
        Squeezed(Told(2, "coat: [hull, deck]", "coat: all")).Should().Contain("masks: discs (low-tack tape) -> discs (low-tack tape, with derrick yellow on it)");

    [Fact]
    public void A_wait_names_its_figure_its_source_and_the_rule() =>
        Squeezed(Told(2)).Should().MatchRegex(@"wait: recoatable \((hull and deck|deck and hull)\): 10–20 min since 'undercoat' on line \d+, a usual figure.*\[recoat-too-soon\]");

    [Fact]
    public void A_wait_from_the_label_says_so() =>
        Squeezed(Told(2, "by: airbrush\n  - mask", "by: airbrush\n    drying: { recoatable: 45 min }\n  - mask")).Should().Contain("45 min since 'undercoat' on line").And.Contain("as label or file say");

    [Fact]
    public void A_mask_that_comes_off_is_gone_afterwards() =>
        Squeezed(Told(3)).Should().Contain("masks: discs (low-tack tape) -> none").And.NotContain("hull");

    [Fact]
    public void A_silenced_rule_is_shown_with_its_reason() =>
        Squeezed(Told(5)).Should().Contain("[no-gloss-under-decal] do: Lay a gloss varnish on deck first. silenced: a dull one is wanted");

    [Fact]
    public void A_silent_rule_says_what_would_make_it_speak() =>
        Squeezed(Told(2)).Should().Contain("no-undercoat: the piece were bare");

    [Fact]
    public void Every_rule_is_there_but_those_of_plans()
    {
        var text = Squeezed(Told(5));

        Check.Rules.Should().OnlyContain(rule => rule is PlanRule != text.Contains(rule.Name, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_step_of_the_demo_fits_eighty_columns()
    {
        var walked = Check.Walked(File.ReadAllText(Path.Combine(Golden.Repository, "workflows/tidewater.yaml")));
        for (var step = 0; step < walked.Routes[0].Route.Steps.Count; step++)
            WhyText.Render(Look.At(walked, Check.Trade, 0, step), [], TextStyle.Plain).Split('\n').Should().OnlyContain(line => line.Length <= 80);
    }

    private static string Told(int step, string old = "", string now = "")
    {
        var model = old.Length == 0 ? Model : Model.Replace(old, now, StringComparison.Ordinal);
        return WhyText.Render(Look.At(Check.Walked(Prelude.Around(model)), Check.Trade, 0, step), [], TextStyle.Plain);
    }

    private static string Squeezed(string text) => string.Join(' ', text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
