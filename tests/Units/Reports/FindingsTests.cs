using System.Text.Json;
using Pipeline.Abstractions;
using Pipeline.Planning;
using Pipeline.Reports;
using Spectre.Console;
using TextStyle = Pipeline.Reports.TextStyle;

namespace Pipeline.Tests.Units.Reports;

public sealed class FindingsTests
{
    private const string File = "workflows/tidewater.yaml";

    private static readonly Dictionary<string, string> Sources = new()
    {
        [File] = "batch: Tidewater\r\nroute:\r\n  - mask: glass   # 潮\r\n  - coat: suit\r\n\t- unmask: glass\r\n",
    };

    private static readonly Sequence<Finding> Some =
    [
        new() { Rule = "mask-left-on", Level = Level.Warning, Place = new Place(File, 3, 11), Message = "The tape on the glass stays on for 40 h; 24 h is its limit.", Remedy = "Take it off on Fri 4 Dec, or use film.", Edits = [new Edit(new Place(File, 5, 2), new Place(File, 5, 17), "- unmask: glass"), new Edit(new Place(File, 6, 1), new Place(File, 6, 1), "  - sand: suit\r\n")] },
        new()
        {
            Level = Level.Error,
            Place = new Place(File, 5, 4),
            Message = "A tab cannot indent a line.",
            Related = [new Related(new Place(File, 2, 1), "the list begins here")],
        },
        new() { Rule = "no-protection", Level = Level.Note, Place = new Place("more.yaml", 1, 1), Message = "The tokens have no varnish.", Model = "Cargo token", Areas = ["field", "symbol"] },
        new() { Rule = "matt-over-metal", Level = Level.Warning, Place = new Place(File, 4, 5), Message = "Matt varnish takes the shine off the suit.", Silenced = "it is meant to look dead" },
    ];

    [Fact]
    public void Text_in_the_gnu_form_gravest_first() =>
        FindingsText.Render(Some, Sources, TextStyle.Plain).Should().Be(
            """
            workflows/tidewater.yaml:5:4: error: A tab cannot indent a line.
                see: workflows/tidewater.yaml:2:1: the list begins here
            workflows/tidewater.yaml:3:11: warning: The tape on the glass stays on for 40 h; 24 h is its limit. [mask-left-on]
                do: Take it off on Fri 4 Dec, or use film.
            more.yaml:1:1: note: The tokens have no varnish. [no-protection]

            1 error, 1 warning, 1 note in 2 files.

            1 silenced:
              workflows/tidewater.yaml:4:5: matt-over-metal: it is meant to look dead

            """);

    [Fact]
    public void On_a_terminal_the_line_is_shown_with_a_mark_under_the_place() =>
        FindingsText.Render(Some.Without(f => f.Level == Level.Note || f.Silenced is not null), Sources, new TextStyle { WithSource = true }).Should().Be(
            """
            workflows/tidewater.yaml:5:4: error: A tab cannot indent a line.
                 5 |  - unmask: glass
                   |    ^
                see: workflows/tidewater.yaml:2:1: the list begins here
            workflows/tidewater.yaml:3:11: warning: The tape on the glass stays on for 40 h; 24 h is its limit. [mask-left-on]
                 3 |   - mask: glass   # 潮
                   |           ^
                do: Take it off on Fri 4 Dec, or use film.

            1 error, 1 warning.

            """);

    [Fact]
    public void A_long_line_is_shown_around_the_place()
    {
        var line = string.Concat(Enumerable.Repeat("潮 hose, ", 100));
        var text = FindingsText.Render(
            [new Finding { Level = Level.Error, Place = new Place("f", 1, line.IndexOf("hose", 400, StringComparison.Ordinal) + 1), Message = "x" }],
            new Dictionary<string, string> { ["f"] = line },
            new TextStyle { WithSource = true }).Split('\n');
        text[1].GetCellWidth().Should().BeLessThanOrEqualTo(80);
        var mark = text[2].IndexOf('^', StringComparison.Ordinal);
        Under(text[1], mark).Should().StartWith("hose");
    }

    [Fact]
    public void A_place_outside_the_file_shows_no_line() =>
        FindingsText.Render([new Finding { Level = Level.Error, Place = new Place(File, 99, 1), Message = "Gone." }], Sources, new TextStyle { WithSource = true })
            .Should().Be($"{File}:99:1: error: Gone.\n\n1 error.\n");

    [Fact]
    public void No_finding_no_text() => FindingsText.Render([], Sources, TextStyle.Plain).Should().BeEmpty();

    [Fact]
    public void Json_keeps_to_the_published_schema()
    {
        var json = FindingsJson.Render(Some);
        Schemas.Findings.Complaints(json).Should().BeEmpty();
        using var document = JsonDocument.Parse(json);
        document.RootElement.GetProperty("counts").EnumerateObject().Select(p => $"{p.Name} {p.Value}").Should().Equal("error 1", "warning 1", "note 1", "silenced 1");
        document.RootElement.GetProperty("findings").EnumerateArray().Select(f => f.GetProperty("level").GetString()).Should().Equal("error", "warning", "warning", "note");
        Schemas.Findings.Complaints(json.Replace("\"level\": \"note\"", "\"level\": \"advice\"", StringComparison.Ordinal)).Should().NotBeEmpty();
    }

    [Theory]
    [MemberData(nameof(Hostile.Names), MemberType = typeof(Hostile))]
    public void A_name_stays_a_name_in_every_form(string name)
    {
        var findings = Hostile.FindingsOf(name);
        Hostile.Steers(FindingsText.Render(findings, new Dictionary<string, string> { [name] = name + "\n\n" + name }, new TextStyle { WithSource = true })).Should().BeFalse();
        Hostile.Steers(FindingsJson.Render(findings)).Should().BeFalse();
        Hostile.Steers(FindingsSarif.Render(findings, [], "1.0")).Should().BeFalse();
        Schemas.Findings.Complaints(FindingsJson.Render(findings)).Should().BeEmpty();
        using var document = JsonDocument.Parse(FindingsJson.Render(findings));
        document.RootElement.GetProperty("findings")[0].GetProperty("message").GetString().Should().Be(name.Replace('\ud800', '\ufffd'));
    }

    [Fact]
    public void No_plan_says_why_and_what_can_be_changed()
    {
        var reason = new Finding { Level = Level.Error, Place = new Place(File, 4, 5), Message = "The suit needs 24 h before tape, and the tape has to be off after 12 h.", Remedy = "Use film." };
        NoPlanText.Render(new PlanOutcome.NoPlan([reason]), Sources, TextStyle.Plain).Should().Be(
            """
            workflows/tidewater.yaml:4:5: error: The suit needs 24 h before tape, and the tape has to be off after 12 h.
                do: Use film.

            1 error.

            No plan: what is said above cannot be satisfied. Change that place and plan
                     again.

            """);
    }

    private static string Under(string line, int cells)
    {
        var i = 0;
        while (line[..i].GetCellWidth() < cells)
            i++;
        return line[i..];
    }
}
