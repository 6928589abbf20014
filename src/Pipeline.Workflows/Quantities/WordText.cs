using System.Buffers;
using System.Text;

namespace Pipeline.Workflows;

/// <summary>Words that stand for one of a few choices.</summary>
internal static class WordText
{
    /// <summary>What to write for a yes or no.</summary>
    public const string YesOrNoExpected = "yes or no";

    /// <summary>What to write for a colour.</summary>
    public const string ColourExpected = "a colour in quotes such as \"#0c0d10\"";

    private static readonly SearchValues<char> HexDigits = SearchValues.Create("0123456789abcdefABCDEF");

    public static Written<bool> YesOrNo(string text) => text switch
    {
        "yes" or "true" => Written<bool>.Says(true),
        "no" or "false" => Written<bool>.Says(false),
        "" => Written<bool>.Not("Nothing is written here."),
        _ => Written<bool>.Not($"‘{NumberText.Shown(text)}’ is neither yes nor no."),
    };

    /// <summary>sRGB as <c>#rrggbb</c>.</summary>
    public static Written<string> Colour(string text)
    {
        if (text.Length == 0)
            return Written<string>.Not("Nothing is written here; a ‘#’ without quotes begins a comment.");
        var isColour = text.Length == 7 && text[0] == '#' && text.AsSpan(1).IndexOfAnyExcept(HexDigits) < 0;
        return isColour ? Written<string>.Says(text.ToLowerInvariant()) : Written<string>.Not($"‘{NumberText.Shown(text)}’ is not a colour.");
    }

    /// <summary>A name of the code as a key of the file: <c>WetInWet</c> is <c>wet-in-wet</c>, <c>IsClear</c> is <c>is-clear</c>, <c>PVA</c> is <c>pva</c>.</summary>
    public static string Kebab(string name) => Parted(name, '-');

    /// <summary>A name of the code as words: <c>WhiteSpirit</c> is <c>white spirit</c>.</summary>
    public static string Spaced(string name) => Parted(name, ' ');

    /// <summary>Choices are the same whatever their case, and whether their words are joined by hyphens or spaces.</summary>
    public static string Folded(string word) => word.ToLowerInvariant().Replace('-', ' ');

    private static string Parted(string name, char between)
    {
        var words = new StringBuilder(name.Length + 4);
        for (var i = 0; i < name.Length; i++)
        {
            var beginsWord = char.IsUpper(name[i]) && i > 0 && (!char.IsUpper(name[i - 1]) || (i + 1 < name.Length && char.IsLower(name[i + 1])));
            if (beginsWord)
                words.Append(between);
            words.Append(char.ToLowerInvariant(name[i]));
        }

        return words.ToString();
    }
}
