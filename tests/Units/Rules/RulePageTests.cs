using Pipeline.Abstractions;

namespace Pipeline.Tests.Units.Rules;

/// <summary>Every rule has a page, and what the page shows is what the rule does.</summary>
public sealed class RulePageTests
{
    private static readonly int PreludeLines = Prelude.Text.Count(letter => letter == '\n');

    public static TheoryData<string> Rules => [.. Check.Rules.Select(rule => rule.Name)];

    public static IEnumerable<object[]> Fragments =>
        RulePage.All.SelectMany(page => page.Fragments.Select(fragment => new object[] { page.Name, fragment.Line }));

    [Theory]
    [MemberData(nameof(Rules))]
    public void Every_rule_has_its_page(string rule)
    {
        var page = PageOf(rule);
        var known = Check.Rules.Single(each => each.Name == rule);

        Path.GetFileName(page.Path).Should().Be(RulePage.FileNameOf(known));
        page.Text.Should().Contain($"Source: {known.Source}").And.MatchRegex("\nIndex: ");
        page.Fragments.Count(fragment => fragment.IsWrong).Should().BeGreaterThanOrEqualTo(1, "a page shows at least one mistake");
        page.Fragments.Count(fragment => !fragment.IsWrong).Should().BeGreaterThanOrEqualTo(2, "a page shows at least two right ways, one a close call");
        page.Fragments.Where(fragment => fragment.IsWrong).SelectMany(RulePage.Marked).Should().Contain(mark => mark.EndsWith(' ' + rule));
    }

    [Fact]
    public void Every_page_belongs_to_a_rule() =>
        RulePage.All.Select(page => page.Name).Should().BeSubsetOf(Check.Rules.Select(rule => rule.Name));

    [Theory]
    [MemberData(nameof(Fragments))]
    public void A_fragment_gives_exactly_the_findings_marked_in_it(string rule, int line)
    {
        var fragment = PageOf(rule).Fragments.Single(each => each.Line == line);
        var offset = fragment.Yaml.Contains("kits:", StringComparison.Ordinal) ? 0 : PreludeLines;

        var isOfPlans = Check.Rules.Single(each => each.Name == rule) is PlanRule;
        var said = isOfPlans ? Check.Planned(Prelude.Around(fragment.Yaml)) : Check.Model(fragment.Yaml);
        var findings = said.Where(finding => finding.Silenced is null).ToList();

        findings.Select(finding => $"{finding.Place.Line - offset} {finding.Rule}").Should().BeEquivalentTo(RulePage.Marked(fragment), Check.Told(findings));
        if (!fragment.IsWrong)
            RulePage.Marked(fragment).Should().BeEmpty();
    }

    [Fact]
    public void The_pages_in_docs_are_those_beside_the_rules()
    {
        foreach (var page in RulePage.All)
            Golden.Of($"docs/rules/{page.Name}.md").ShouldBe(page.Text);
        Golden.Of("docs/rules/README.md").ShouldBe(RuleIndex.Page());
        Directory.GetFiles(Path.Combine(Golden.Repository, "docs/rules")).Select(Path.GetFileNameWithoutExtension)
            .Should().BeEquivalentTo(RulePage.All.Select(page => page.Name).Append("README"));
    }

    private static RulePage PageOf(string rule)
    {
        var page = RulePage.All.SingleOrDefault(each => each.Name == rule);
        page.Should().NotBeNull($"the rule {rule} needs a page beside its class, titled '# {rule}'");
        return page!;
    }
}
