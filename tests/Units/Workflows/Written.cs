using System.Globalization;
using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Workflows;

/// <summary>
/// Reads and binds a file as a test tells it. A line that must give a finding ends in <c>#! part of its message</c>; the finding
/// must begin on that line, and no other may be given.
/// </summary>
internal static class Written
{
    /// <summary>A file with a bench and some paints, whose only model has the route and the areas suit, helmet, glass.</summary>
    public static string WithRoute(string route, string more = "") => $$"""
        batch: Crew
        bench:
          zone: Europe/Lisbon
          sittings: [{ days: mon-fri, from: 19:00, to: 22:00 }]
        paints:
          harbour black: { family: acrylic lacquer, sheen: gloss, colour: "#0c0d10" }
          rope bone: { family: waterborne acrylic }
        {{more}}
        kits:
          - kit: Divers
            models:
              - model: Diver
                count: 3
                material: resin
                areas: { suit: 30 cm², helmet: 6 cm², glass: 1 cm² }
                route:
        {{Indented(route, 10)}}
        """;

    public static Binding Bind(params string[] files) => Bind(TestTrade.Trade, files);

    /// <summary>Files bound with a trade.</summary>
    public static Binding Bind(Trade trade, params string[] files)
    {
        var readings = files.Select((text, index) => Reader.Read(new SourceText(files.Length == 1 ? "crew.yaml" : $"crew{index + 1}.yaml", text))).ToList();
        var findings = readings.SelectMany(reading => reading.Findings).ToList();
        var trees = readings.Select(reading => reading.Tree).OfType<SyntaxTree>().ToList();
        if (trees.Count == 0)
            return new Binding(null, findings.ToSequence());
        var bound = Binder.Bind(trees, trade);
        return new Binding(bound.Batch, findings.Concat(bound.Findings).OrderBy(finding => finding.Place).ToSequence());
    }

    /// <summary>The batch of a file without a mistake.</summary>
    public static Batch Batch(params string[] files)
    {
        var bound = Bind(files);
        bound.Findings.Should().BeEmpty();
        return bound.Batch!;
    }

    /// <summary>The only route of a file with that route.</summary>
    public static Route Route(string route, string more = "") => Batch(WithRoute(route, more)).Routes.Single();

    /// <summary>The file gives the mistakes marked in it and no others.</summary>
    public static void Says(string text)
    {
        var found = Finds(text);
        found.Batch.Should().BeNull();
        found.Findings.Should().OnlyContain(finding => finding.Rule == null && finding.Level == Level.Error);
    }

    /// <summary>The file gives the findings marked in it and no others, of whatever level.</summary>
    public static Binding Finds(string text, string because = "", Trade? trade = null)
    {
        var expected = text.Split('\n')
            .Select((line, index) => (Line: index + 1, Mark: line.IndexOf("#! ", StringComparison.Ordinal), Text: line))
            .Where(line => line.Mark >= 0)
            .SelectMany(line => line.Text[(line.Mark + 3)..].Split(" #! ").Select(part => (line.Line, Part: part.Trim())))
            .ToList();
        var found = Bind(trade ?? TestTrade.Trade, text);
        var told = string.Join('\n', found.Findings.Select(finding => $"{finding.Place} {finding.Message} {finding.Remedy}"));
        found.Findings.Should().HaveCount(expected.Count, $"{because}:\n{told}");
        foreach (var (line, part) in expected)
            found.Findings.Should().Contain(finding => finding.Place.Line == line && $"{finding.Message} {finding.Remedy}".Contains(part), "line {0} should say ‘{1}’ in\n{2}", line, part, told);
        return found;
    }

    /// <summary>The route gives the findings marked in it and no others.</summary>
    public static void RouteSays(string route, string more = "") => Says(WithRoute(route, more));

    public static string Indented(string text, int by)
    {
        var indentation = new string(' ', by);
        return string.Join('\n', text.Replace("\r", "", StringComparison.Ordinal).Split('\n').Select(line => line.Length == 0 ? line : indentation + line));
    }

    public static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
