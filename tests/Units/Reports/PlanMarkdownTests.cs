using Pipeline.Reports;

namespace Pipeline.Tests.Units.Reports;

public sealed class PlanMarkdownTests
{
    [Fact]
    public void Two_weeks() =>
        Golden.Of("tests/Units/Reports/golden/two-weeks.md").ShouldBe(PlanMarkdown.Render(TwoWeeks.Plan));

    [Theory]
    [InlineData("a|b", @"a\|b")]
    [InlineData("[link](javascript:x)", @"\[link\](javascript:x)")]
    [InlineData("`code` **bold** _thin_", @"\`code\` \*\*bold\*\* \_thin\_")]
    [InlineData("<b>&copy;", "&lt;b&gt;&amp;copy;")]
    [InlineData("# head", @"\# head")]
    [InlineData("- item", @"\- item")]
    [InlineData("12. item", @"12\. item")]
    [InlineData("1.5 parts", "1.5 parts")]
    [InlineData("    code", "code")]
    [InlineData("https://harbour.example", @"https\://harbour.example")]
    [InlineData("www.harbour.example", @"www\.harbour.example")]
    [InlineData("me@harbour.example", @"me\@harbour.example")]
    [InlineData("two\nlines\u202E", @"two lines\\u\{202E\}")]
    public void Words_stay_words(string words, string written) =>
        PlanMarkdown.Render(Harbour.Empty with { Batch = words }).Split('\n')[0].Should().Be($"# {written}");

    [Theory]
    [MemberData(nameof(Hostile.Names), MemberType = typeof(Hostile))]
    public void A_name_adds_neither_lines_nor_cells_nor_tags(string name)
    {
        var plain = PlanMarkdown.Render(Hostile.PlanOf("name"));
        var hostile = PlanMarkdown.Render(Hostile.PlanOf(name));
        Hostile.Steers(hostile).Should().BeFalse();
        hostile.Should().NotContain("<");
        if (name.Trim().Length == 0)
            return;
        hostile.Split('\n').Should().HaveSameCount(plain.Split('\n'));
        hostile.Split('\n').Select(Bars).Should().Equal(plain.Split('\n').Select(Bars));
    }

    private static int Bars(string line) => line.Replace(@"\\", "", StringComparison.Ordinal).Replace(@"\|", "", StringComparison.Ordinal).Count(c => c == '|');
}
