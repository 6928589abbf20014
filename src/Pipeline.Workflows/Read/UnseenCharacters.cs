using System.Buffers;
using System.Globalization;

namespace Pipeline.Workflows;

/// <summary>
/// Characters that cannot be seen or that change how the text around them is shown: controls, direction marks
/// (Unicode Technical Report 36, quoted from memory), invisible joiners. In a name they make two things look like one.
/// </summary>
internal static class UnseenCharacters
{
    private static readonly SearchValues<char> Refused = SearchValues.Create([.. All()]);

    /// <summary>Index of the first such character, or -1. Tabs and line ends are no such characters.</summary>
    public static int IndexIn(ReadOnlySpan<char> text) => text.IndexOfAny(Refused);

    /// <summary>What the character is, for a message: <c>U+202E, which turns the direction of the text</c>.</summary>
    public static string Describe(string text, int index)
    {
        var codePoint = char.IsHighSurrogate(text[index]) && index + 1 < text.Length && char.IsLowSurrogate(text[index + 1])
            ? char.ConvertToUtf32(text[index], text[index + 1])
            : text[index];
        var what = codePoint switch
        {
            < 0x20 or (>= 0x7F and < 0xA0) => "a control character",
            0x61C or 0x200E or 0x200F or (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069) => "which turns the direction of the text",
            0x2028 or 0x2029 => "a hidden line end",
            >= 0xD800 and <= 0xDFFF => "half a character",
            _ => "which cannot be seen",
        };
        return string.Create(CultureInfo.InvariantCulture, $"U+{codePoint:X4}, {what}");
    }

    private static IEnumerable<char> All()
    {
        for (var c = '\0'; c < ' '; c++)
        {
            if (c is not ('\t' or '\n' or '\r'))
                yield return c;
        }

        for (var c = '\x7F'; c < '\xA0'; c++)
            yield return c;
        foreach (var c in "\u00AD\u061C\u180E\u200B\u200E\u200F\u2028\u2029\u202A\u202B\u202C\u202D\u202E\uFEFF\uFFF9\uFFFA\uFFFB\uDB40")
            yield return c;
        for (var c = '\u2060'; c <= '\u206F'; c++)
            yield return c;
    }
}
