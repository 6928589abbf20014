using System.Text.RegularExpressions;
using Pipeline.Abstractions;
using Pipeline.Engine;
using Pipeline.Tests.Units.Rules;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Mends;

/// <summary>What rules offer does what they ask for: on every wrong example of every page, the mend makes its finding go and brings none.</summary>
public sealed class MendPageTests
{
    public static IEnumerable<object[]> WrongExamples =>
        RulePage.All.SelectMany(page => page.Fragments.Where(fragment => fragment.IsWrong).Select(fragment => new object[] { page.Name, fragment.Line }));

    [Theory]
    [MemberData(nameof(WrongExamples))]
    public void A_mend_makes_its_finding_go_and_brings_no_other(string rule, int line)
    {
        var source = Source(rule, line);
        var before = Stages.Check([source], Check.Trade);
        foreach (var finding in Stages.WithEdits([source], before.Findings).Where(finding => finding.Mend is not null))
        {
            finding.Edits.IsEmpty.Should().BeFalse($"the mend of {finding.Rule} can be written into an ordinary file");

            var after = Stages.Check([Editing.Apply(source, finding.Edits)], Check.Trade);

            after.Findings.Count(each => each.Rule == finding.Rule).Should().BeLessThan(before.Findings.Count(each => each.Rule == finding.Rule), Check.Told(after.Findings));
            after.Findings.Select(each => each.Rule).Should().BeSubsetOf(before.Findings.Select(each => each.Rule), Check.Told(after.Findings));
        }
    }

    [Theory]
    [MemberData(nameof(WrongExamples))]
    public void Mending_changes_nothing_but_the_lines_it_is_about(string rule, int line)
    {
        var source = Remarked(Source(rule, line));

        var mended = Mender.Mend([source], Check.Trade);

        var (old, now) = (source.Text.Split("\r\n"), mended.After.Texts[0].Text.Split("\r\n"));
        now.Where(each => each.Contains('#', StringComparison.Ordinal)).Should().BeEquivalentTo(old.Where(each => each.Contains('#', StringComparison.Ordinal)), "no remark is lost");
        now.Should().NotContain(each => each.Contains('\n', StringComparison.Ordinal), "new lines end as the others do");
        var gone = old.Where(each => !now.Contains(each)).ToList();
        gone.RemoveAll(each => mended.Made.Any(finding => finding.Mend switch
        {
            Mend.SetKey set => each.Contains($"{set.Key}:", StringComparison.Ordinal),
            Mend.TakeOut => each.Contains("unmask:", StringComparison.Ordinal),
            _ => false,
        }));
        gone.Should().BeEmpty("only a step taken out or a value rewritten go");
        if (mended.Made.IsEmpty)
            mended.After.Texts[0].Text.Should().Be(source.Text);
    }

    private static SourceText Source(string rule, int line) =>
        new("case.yaml", Prelude.Around(Regex.Replace(
            RulePage.All.Single(page => page.Name == rule).Fragments.Single(fragment => fragment.Line == line).Yaml, " *# <- .*", "")));

    /// <summary>With a remark above every step and lines that end as on Windows.</summary>
    private static SourceText Remarked(SourceText source)
    {
        var count = 0;
        var lines = source.Text.Split('\n').SelectMany(line =>
        {
            var isStep = line.TrimStart(' ').StartsWith("- ", StringComparison.Ordinal) && !line.Contains("kit:", StringComparison.Ordinal) && !line.Contains("model:", StringComparison.Ordinal);
            return isStep ? new[] { $"{line[..(line.Length - line.TrimStart(' ').Length)]}# remark {++count}", line } : [line];
        });
        return source with { Text = string.Join("\r\n", lines) };
    }
}
