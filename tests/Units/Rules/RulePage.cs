using System.Text.RegularExpressions;
using Pipeline.Abstractions;

namespace Pipeline.Tests.Units.Rules;

/// <summary>A fragment of a workflow on a rule's page, with the findings it must give.</summary>
/// <param name="IsWrong">Under "Wrong:" (true) or "Right:" (false).</param>
/// <param name="Yaml">The fragment.</param>
/// <param name="Line">Its first line on the page.</param>
internal sealed record Fragment(bool IsWrong, string Yaml, int Line);

/// <summary>The page of a rule: what it asks, why, its source, and fragments that are run.</summary>
internal sealed partial class RulePage
{
    private RulePage(string path, string text)
    {
        Path = path;
        Text = text;
        Name = text.StartsWith("# ", StringComparison.Ordinal) ? text[2..text.IndexOf('\n', StringComparison.Ordinal)].Trim() : "";
        Fragments = [.. Find(text)];
    }

    /// <summary>All pages beside rules, by file name in ordinal order.</summary>
    public static IReadOnlyList<RulePage> All { get; } =
    [
        .. Directory.GetFiles(System.IO.Path.Combine(Golden.Repository, "plugins"), "*.md", SearchOption.AllDirectories)
            .Concat(Directory.GetFiles(System.IO.Path.Combine(Golden.Repository, "src/Pipeline.Surfaces/Rules"), "*.md"))
            .Where(path => System.IO.Path.GetFileName(System.IO.Path.GetDirectoryName(path)) == "Rules")
            .OrderBy(path => path, StringComparer.Ordinal)
            .Select(path => new RulePage(path, File.ReadAllText(path))),
    ];

    /// <summary>The pages of a folder of the repository, by file name in ordinal order.</summary>
    public static IEnumerable<RulePage> In(string folder) =>
        Directory.GetFiles(System.IO.Path.Combine(Golden.Repository, folder), "*.md")
            .OrderBy(path => path, StringComparer.Ordinal)
            .Select(path => new RulePage(path, File.ReadAllText(path)));

    public string Path { get; }

    public string Text { get; }

    /// <summary>The title: the rule's name.</summary>
    public string Name { get; }

    public IReadOnlyList<Fragment> Fragments { get; }

    /// <summary>The file name a rule's page must have: that of its class.</summary>
    public static string FileNameOf(Rule rule) => rule.GetType().Name + ".md";

    /// <summary>The findings a fragment marks: its line, the level if the mark says one, and the rule's name.</summary>
    public static IReadOnlyList<string> Marked(Fragment fragment) =>
        [.. fragment.Yaml.Split('\n').SelectMany((line, index) => Mark().Matches(line).Select(mark => $"{index + 1} {mark.Groups[1].Value}"))];

    private static IEnumerable<Fragment> Find(string text)
    {
        bool? isWrong = null;
        List<string>? inside = null;
        var lines = text.Split('\n');
        for (var i = 0; i < lines.Length; i++)
        {
            if (inside is null)
            {
                isWrong = lines[i].StartsWith("Wrong:", StringComparison.Ordinal) ? true : lines[i].StartsWith("Right:", StringComparison.Ordinal) ? false : isWrong;
                if (lines[i] == "```yaml" && isWrong is not null)
                    inside = [];
            }
            else if (lines[i] == "```")
            {
                yield return new Fragment(isWrong!.Value, string.Join('\n', inside), i - inside.Count + 1);
                (inside, isWrong) = (null, null);
            }
            else
            {
                inside.Add(lines[i]);
            }
        }
    }

    [GeneratedRegex(@"# <- ((?:(?:error|warning|note) )?[a-z-]+)", RegexOptions.CultureInvariant)]
    private static partial Regex Mark();
}
