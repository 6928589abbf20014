using System.Globalization;
using System.Text;

namespace Pipeline.Workflows;

/// <summary>Names and steps as they are written in a workflow file.</summary>
internal static class StepText
{
    /// <summary>A text as a YAML scalar that reads as itself in any surroundings: plain if its letters allow, else in double quotes.</summary>
    public static string Scalar(string text)
    {
        if (IsPlain(text))
            return text;
        var quoted = new StringBuilder("\"");
        foreach (var letter in text)
        {
            if (letter is '"' or '\\')
                quoted.Append('\\').Append(letter);
            else if (letter < ' ' || char.GetUnicodeCategory(letter) is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator)
                quoted.Append(CultureInfo.InvariantCulture, $"\\u{(int)letter:X4}");
            else
                quoted.Append(letter);
        }

        return quoted.Append('"').ToString();
    }

    /// <summary>One name, or a list of names in brackets.</summary>
    public static string Names(IReadOnlyList<string> names) =>
        names.Count == 1 ? Scalar(names[0]) : $"[{string.Join(", ", names.Select(Scalar))}]";

    /// <summary>The names a node gives; null if it is anything but a text or a list of texts.</summary>
    public static IReadOnlyList<string>? NamesIn(SyntaxNode node) => node switch
    {
        TextNode { IsMissing: false } text => [text.Text],
        ListNode { Items.Count: > 0 } list when list.Items.All(item => item is TextNode { IsMissing: false }) => [.. list.Items.Select(item => ((TextNode)item).Text)],
        _ => null,
    };

    // strict rather than clever: a name in needless quotes still reads
    private static bool IsPlain(string text)
    {
        if (text.Length == 0 || !char.IsLetterOrDigit(text[0]) || text[^1] == ' ')
            return false;
        foreach (var letter in text)
        {
            if (!char.IsLetterOrDigit(letter) && letter is not (' ' or '-' or '_' or '.' or '/' or '+' or '%' or '°' or '(' or ')' or '\''))
                return false;
        }

        return true;
    }
}
