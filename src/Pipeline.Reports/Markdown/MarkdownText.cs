using System.Text;
using System.Text.RegularExpressions;

namespace Pipeline.Reports;

/// <summary>Markdown (GitHub's form of CommonMark) in which words from a file stay words: no markup, link, HTML or table bar comes of them.</summary>
internal sealed partial class MarkdownText
{
    private readonly StringBuilder text = new();

    /// <summary>Words from a file, escaped; also safe in a table cell and at the beginning of a list item.</summary>
    public static string Escaped(string words)
    {
        var line = Visible.Line(words).Trim(' ');
        var escaped = new StringBuilder(line.Length + 8);
        foreach (var c in line)
        {
            _ = c switch
            {
                '&' => escaped.Append("&amp;"),
                '<' => escaped.Append("&lt;"),
                '>' => escaped.Append("&gt;"),
                '\\' or '`' or '*' or '_' or '{' or '}' or '[' or ']' or '#' or '!' or '|' or '~' or '@' or '$' => escaped.Append('\\').Append(c),
                _ => escaped.Append(c),
            };
        }

        var unlinked = BareLink().Replace(escaped.ToString(), "$1\\$2");
        return ListMark().Replace(unlinked, "$1\\$2");
    }

    /// <summary>A heading with an empty line around it.</summary>
    public void Heading(int level, string words) => Block($"{new string('#', level)} {words}");

    /// <summary>A paragraph, or any other block.</summary>
    public void Block(string words)
    {
        if (text.Length > 0)
            text.Append('\n');
        text.Append(words).Append('\n');
    }

    /// <summary>Another line of the block before, such as a list item.</summary>
    public void Line(string words) => text.Append(words).Append('\n');

    /// <summary>An empty line.</summary>
    public void Blank() => text.Append('\n');

    /// <summary>A table. Cells are ready Markdown.</summary>
    public void Table(IReadOnlyList<Column> columns, IReadOnlyList<IReadOnlyList<string>> rows, bool leaveOutEmpty = true)
    {
        var used = Enumerable.Range(0, columns.Count).Where(i => !leaveOutEmpty || rows.Any(row => row[i].Length > 0)).ToList();
        Block(Row(used.Select(i => columns[i].Head)));
        Line(Row(used.Select(i => columns[i].FromRight ? "--:" : "---")));
        foreach (var row in rows)
            Line(Row(used.Select(i => row[i])));
    }

    /// <summary>The document.</summary>
    public override string ToString() => text.ToString();

    private static string Row(IEnumerable<string> cells) => $"| {string.Join(" | ", cells)} |";

    [GeneratedRegex(@"(https?|ftp|mailto|xmpp|www)([:.])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex BareLink();

    [GeneratedRegex(@"^([0-9]+(?=[.)](?: |$))|)([-+=.)])", RegexOptions.CultureInvariant)]
    private static partial Regex ListMark();
}
