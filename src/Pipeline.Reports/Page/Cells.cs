using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Spectre.Console;

namespace Pipeline.Reports;

/// <summary>Text measured in terminal cells: most characters take one, ideographs and emoji two, combining marks none.</summary>
internal static partial class Cells
{
    private const char Glue = '\u00A0';

    /// <summary>Cells a text takes.</summary>
    public static int Width(string text) => text.GetCellWidth();

    /// <summary>Filled up with spaces on the right.</summary>
    public static string Left(string text, int cells) => text + new string(' ', Math.Max(0, cells - Width(text)));

    /// <summary>Filled up with spaces on the left.</summary>
    public static string Right(string text, int cells) => new string(' ', Math.Max(0, cells - Width(text))) + text;

    /// <summary>As much from the beginning as fits; what is cut off is marked by three dots.</summary>
    public static string Fit(string text, int cells)
    {
        if (Width(text) <= cells)
            return text;
        var kept = new StringBuilder();
        var used = 0;
        var clusters = StringInfo.GetTextElementEnumerator(text);
        while (clusters.MoveNext() && used + Width(clusters.GetTextElement()) + 3 <= cells)
        {
            kept.Append(clusters.GetTextElement());
            used += Width(clusters.GetTextElement());
        }

        return kept.Append("...").ToString();
    }

    /// <summary>Broken between words into lines that fit; a word that is longer is broken between characters. A figure keeps its unit.</summary>
    public static IReadOnlyList<string> Wrap(string text, int cells)
    {
        var lines = new List<string>();
        var line = new StringBuilder();
        var used = 0;
        foreach (var word in Words(text))
        {
            var width = Width(word);
            if (used > 0 && used + 1 + width > cells)
                EndLine();
            if (used > 0)
            {
                line.Append(' ');
                used++;
            }

            foreach (var piece in Pieces(word, cells))
            {
                if (used + piece.Width > cells)
                    EndLine();
                line.Append(piece.Text);
                used += piece.Width;
            }
        }

        if (used > 0 || lines.Count == 0)
            EndLine();
        return lines;

        void EndLine()
        {
            lines.Add(line.ToString());
            line.Clear();
            used = 0;
        }
    }

    private static IEnumerable<(string Text, int Width)> Pieces(string word, int cells)
    {
        var width = Width(word);
        if (width <= cells)
        {
            yield return (word, width);
            yield break;
        }

        var clusters = StringInfo.GetTextElementEnumerator(word);
        while (clusters.MoveNext())
            yield return (clusters.GetTextElement(), Width(clusters.GetTextElement()));
    }

    /// <summary>Words, with a figure and its unit, or a day and its time, as one.</summary>
    private static IEnumerable<string> Words(string text) =>
        Together().Replace(text, match => match.Value.Replace(' ', Glue))
            .Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(word => word.Replace(Glue, ' '));

    [GeneratedRegex(
        @"\d (?:min|h|d|mL|cm²|°C|%|parts?|drops?|cups?|coats?)\b(?: \d+ (?:min|h)\b)?|\b(?:Mon|Tue|Wed|Thu|Fri|Sat|Sun)(?: \d\d?(?: [A-Z][a-z][a-z])?)?(?: \d\d:\d\d)?",
        RegexOptions.CultureInvariant)]
    private static partial Regex Together();
}
