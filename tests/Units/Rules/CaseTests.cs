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

        findings.Select(finding => $"{finding.Place.Line - PreludeLines} {finding.Rule}").Should().BeEquivalentTo(RulePage.Marked(fragment), Check.Told(findings));
        RulePage.Marked(fragment).Should().HaveCount(fragment.IsWrong ? 1 : 0);
    }
}
