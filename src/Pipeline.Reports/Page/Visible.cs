using System.Globalization;
using System.Text;

namespace Pipeline.Reports;

/// <summary>Text from files, made harmless for a page: it can neither steer a terminal nor hide nor reorder what is read.</summary>
internal static class Visible
{
    /// <summary>
    /// One line of text. Line ends and tabs become spaces; control, format, private and unassigned characters
    /// are shown as <c>\u{202E}</c>.
    /// </summary>
    public static string Line(string text)
    {
        if (IsHarmless(text))
            return text;
        var shown = new StringBuilder(text.Length);
        foreach (var rune in text.Replace("\r\n", "\n", StringComparison.Ordinal).EnumerateRunes())
        {
            if (rune.Value is '\n' or '\r' or '\t')
                shown.Append(' ');
            else if (Misleads(rune))
                shown.Append(CultureInfo.InvariantCulture, $"\\u{{{rune.Value:X}}}");
            else
                shown.Append(rune);
        }

        return shown.ToString();
    }

    private static bool IsHarmless(string text)
    {
        foreach (var c in text)
        {
            if (c is < ' ' or > '~')
                return false;
        }

        return true;
    }

    /// <summary>Whether a character has no picture of its own, or changes that of others. A lone surrogate reads as U+FFFD, which has one.</summary>
    private static bool Misleads(Rune rune) => Rune.GetUnicodeCategory(rune) is
        UnicodeCategory.Control or
        UnicodeCategory.Format or
        UnicodeCategory.LineSeparator or
        UnicodeCategory.ParagraphSeparator or
        UnicodeCategory.PrivateUse or
        UnicodeCategory.Surrogate or
        UnicodeCategory.OtherNotAssigned;
}
