using Pipeline.Abstractions;

namespace Pipeline.Tests.Units.Rules;

/// <summary>Cases across the rules, half of them right: what an experienced painter would say, and what they would let pass (common practice).</summary>
public sealed class CaseTests
{
    private static readonly int PreludeLines = Prelude.Text.Count(letter => letter == '\n');

    public static IEnumerable<object[]> Cases =>
        RulePage.In("tests/Units/Rules/Cases").SelectMany(page => page.Fragments.Select(fragment => new object[] { page.Name, fragment.Line }));

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_case_gives_exactly_the_findings_marked_in_it(string page, int line)
    {
        var fragment = RulePage.In("tests/Units/Rules/Cases").Single(each => each.Name == page).Fragments.Single(each => each.Line == line);

        var findings = Check.Model(fragment.Yaml).Where(finding => finding.Silenced is null).ToList();

        var marked = RulePage.Marked(fragment);

        var before = fragment.Yaml.Contains("kits:", StringComparison.Ordinal) ? 0 : PreludeLines;

        // a mark may say the level as well
        findings.Select(finding => marked.Contains(Told(finding, before, withLevel: true)) ? Told(finding, before, withLevel: true) : Told(finding, before, withLevel: false))
            .Should().BeEquivalentTo(marked, Check.Told(findings));
        marked.Any().Should().Be(fragment.IsWrong);
    }

    private static string Told(Finding finding, int before, bool withLevel) => FormattableString.Invariant(
        $"{finding.Place.Line - before} {(withLevel ? finding.Level.ToString().ToLowerInvariant() + " " : "")}{finding.Rule}");
}
