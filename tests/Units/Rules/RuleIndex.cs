using System.Text;

namespace Pipeline.Tests.Units.Rules;

/// <summary>The list of all rules, generated from their classes and pages.</summary>
internal static class RuleIndex
{
    public static string Page()
    {
        var page = new StringBuilder();
        page.Append("# Rules\n\nGenerated from the rules and the pages beside them; do not edit.\n\n");
        page.Append("| rule | what it asks | index |\n|---|---|---|\n");
        foreach (var rule in Check.Rules)
        {
            var index = RulePage.All.First(each => each.Name == rule.Name).Text.Split('\n').First(line => line.StartsWith("Index: ", StringComparison.Ordinal));
            page.Append(FormattableString.Invariant($"| [{rule.Name}]({rule.Name}.md) | {rule.Summary} | {index["Index: ".Length..]} |\n"));
        }

        page.Append("\n## The examples\n\n");
        page.Append("Every example on a page is run as a test. A line that bears `# <- rule-name` gives that finding, and no other line gives any.\n");
        page.Append("An example that starts with `material`, `areas` or `route` is one model; this stands around it:\n\n```yaml\n");
        return page.Append(Prelude.Text).Append("        # the example, indented to here\n```\n").ToString();
    }
}
