using System.Text;
using CsCheck;
using Pipeline.Abstractions;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Rules;

/// <summary>What must hold of the findings of any route, right or wrong.</summary>
public sealed class FindingLawTests
{
    private static readonly string[] Areas = ["hull", "lens", "deck"];

    private static readonly string[] Steps =
    [
        "clean: {0}", "trim: {0}", "fill: {0}", "sand: {0}", "undercoat: {0}; with: slate undercoat; by: airbrush", "undercoat: {0}; with: water undercoat; by: brush",
        "coat: {0}; with: derrick yellow; by: brush", "coat: {0}; with: girder grey; by: airbrush", "coat: {0}; with: harbour black; by: airbrush",
        "coat: {0}; with: hull green; by: brush", "coat: {0}; with: bellfounder brass; by: airbrush", "coat: {0}; with: tar; by: brush", "stain: {0}; with: bilge ink",
        "clear-colour: {0}; with: whisky glass; by: airbrush; coats: 3", "wash: {0}; with: bilge wash", "wash: {0}; with: rust shade", "streak: {0}; with: kelp streak",
        "panel-line: {0}; with: bilge wash", "varnish: {0}; with: clear w gloss; by: airbrush", "varnish: {0}; with: clear l gloss; by: airbrush; body: mist",
        "varnish: {0}; with: clear w matt; by: brush", "decal: {0}", "soften: {0}", "pigment: {0}", "texture: {0}", "mask: {0}; using: low-tack tape; as: m{1}",
        "mask: {0}; using: liquid mask; as: m{1}", "unmask: {0}", "clean-back: {0}; with: white spirit", "strip: {0}; with: alkaline cleaner", "photograph: {0}",
    ];

    private static readonly Gen<List<(int Step, int Area)>> Routes = Gen.Select(Gen.Int[0, Steps.Length - 1], Gen.Int[0, Areas.Length]).List[1, 12];

    [Fact]
    public void Other_names_for_areas_change_only_the_names() => Routes.Sample(
        route =>
        {
            string[] others = ["jib", "port", "quay"];
            return Walked(route, Areas) is not { } plain
                || Told(plain, rename: area => others[Array.IndexOf(Areas, area)]).SequenceEqual(Told(Walked(route, others)!));
        },
        iter: 300);

    [Fact]
    public void More_units_change_no_finding() => Routes.Sample(
        route => Walked(route, Areas) is not { } one || Told(one).SequenceEqual(Told(Walked(route, Areas, count: 7)!)),
        iter: 300);

    [Fact]
    public void Steps_that_keep_no_order_can_be_swapped_without_a_finding_more_or_less() => Routes.Sample(
        route =>
        {
            if (Walked(route, Areas) is not { } straight)
                return true;
            var ordered = straight.Routes[0].Order.Select(pair => (pair.Earlier, pair.Later)).ToHashSet();
            var batch = straight.Batch;
            for (var i = 0; i + 1 < route.Count; i++)
            {
                if (ordered.Contains((i, i + 1)))
                    continue;
                var walked = Walk.Run(Swapped(batch, i), Check.Trade);
                Told(walked).Should().Equal(Told(straight), "steps {0} and {1} keep no order", i, i + 1);
            }

            return true;
        },
        iter: 200);

    [Fact]
    public void Walking_twice_says_the_same() => Routes.Sample(
        route => Walked(route, Areas) is not { } first || Told(first).SequenceEqual(Told(Walk.Run(first.Batch, Check.Trade))),
        iter: 100);

    // the same steps with two neighbours changed over; their places in the file stay with them
    private static Batch Swapped(Batch batch, int at)
    {
        var route = batch.Kits[0].Routes[0];
        var steps = route.Steps.Select((step, index) => index == at ? route.Steps[at + 1] with { Index = at }
            : index == at + 1 ? route.Steps[at] with { Index = at + 1 } : step).ToSequence();
        return batch with { Kits = [batch.Kits[0] with { Routes = [route with { Steps = steps }] }] };
    }

    private static Walked? Walked(List<(int Step, int Area)> route, string[] names, int count = 1)
    {
        var text = new StringBuilder();
        text.Append(FormattableString.Invariant($"count: {count}\nmaterial: resin\nareas: {{ {names[0]}: 20 cm², {names[1]}: 2 cm², {names[2]}: 6 cm² }}\nroute:\n"));
        for (var i = 0; i < route.Count; i++)
        {
            var area = route[i].Area == names.Length ? "all" : names[route[i].Area];
            text.Append("  - ").Append(string.Format(System.Globalization.CultureInfo.InvariantCulture, Steps[route[i].Step], area, i).Replace("; ", "\n    ", StringComparison.Ordinal)).Append('\n');
        }

        var reading = Reader.Read(new SourceText("law.yaml", Prelude.Around(text.ToString())));
        var bound = Binder.Bind([reading.Tree!], Check.Trade);
        return bound.Batch is { } batch ? Walk.Run(batch, Check.Trade) : null;
    }

    // place, rule, level and areas; not the words, in which areas may be listed in another order
    private static IEnumerable<string> Told(Walked walked, Func<string, string>? rename = null) => walked.Findings.Select(finding =>
        $"{finding.Place} {finding.Rule} {finding.Level} {string.Join('+', finding.Areas.Select(area => rename?.Invoke(area) ?? area).Order(StringComparer.Ordinal))}")
        .Order(StringComparer.Ordinal);
}
