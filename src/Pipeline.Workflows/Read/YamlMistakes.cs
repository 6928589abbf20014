using Pipeline.Abstractions;
using YamlDotNet.Core;

namespace Pipeline.Workflows;

/// <summary>Turns what the YAML parser says into a painter's words.</summary>
internal static class YamlMistakes
{
    /// <summary>Adds the finding and returns the line (from 1) from which reading may go on.</summary>
    public static int Describe(YamlException mistake, string file, string text, int lineOffset, FindingList findings)
    {
        var line = (int)Math.Max(1, mistake.Start.Line) + lineOffset;
        var column = (int)Math.Max(1, mistake.Start.Column);
        if (mistake.Message.Contains("tab as indentation", StringComparison.Ordinal) || mistake.Message.Contains("tab character", StringComparison.Ordinal))
            (line, column) = TabFrom(text, line);
        var written = LineAt(text, line);
        var (message, remedy) = Words(mistake.Message, written, column);

        if (!mistake.Message.Contains("flow", StringComparison.Ordinal) || !DescribeColour(file, text, line, findings))
            findings.Error(new Place(file, line, column), message, remedy);
        return line + 1;
    }

    /// <summary>The first tab in the indentation of a line, from the given one downwards; the parser only says where the mapping begins.</summary>
    private static (int Line, int Column) TabFrom(string text, int line)
    {
        var number = 0;
        foreach (var written in text.AsSpan().EnumerateLines())
        {
            var tab = ++number < line ? -1 : written.IndexOf('\t');
            if (tab >= 0 && written[..tab].IsWhiteSpace())
                return (number, tab + 1);
        }

        return (line, 1);
    }

    /// <summary>Adds the finding for a bracket or brace that is not closed.</summary>
    public static void DescribeUnclosed(Place opened, bool isMapping, string text, int lastLine, FindingList findings)
    {
        if (DescribeColour(opened.File, text, lastLine, findings))
            return;
        if (isMapping)
            findings.Error(opened, "The ‘{’ here is never closed.", "Close it with ‘}’.");
        else
            findings.Error(opened, "The ‘[’ here is never closed.", "Close it with ‘]’.");
    }

    /// <summary>A colour without quotes is a comment to YAML; in a mapping in braces it hides the closing brace.</summary>
    private static bool DescribeColour(string file, string text, int line, FindingList findings)
    {
        if (ColourAbove(text, line) is not { } colourLine)
            return false;
        var column = LineAt(text, colourLine).IndexOf(": #", StringComparison.Ordinal) + 3;
        findings.Error(new Place(file, colourLine, column), "A ‘#’ without quotes begins a comment, so the rest of this line is not read.", "Write the colour in quotes: colour: \"#0c0d10\".");
        return true;
    }

    private static (string Message, string Remedy) Words(string said, string line, int column)
    {
        var indentation = line.AsSpan(0, line.Length - line.AsSpan().TrimStart(" \t").Length);
        if (indentation.Contains('\t') || (column <= line.Length && line[column - 1] == '\t'))
            return ("The line is indented with a tab.", "Indent with spaces only; two for each step inwards.");
        var at = column <= line.Length ? line[column - 1] : ' ';
        return said switch
        {
            _ when Has("cannot start any token") => ($"A value cannot begin with ‘{at}’.", "Put the value in quotes."),
            _ when Has("found invalid mapping") || Has("mapping values are not allowed") =>
                ("There is a second ‘: ’ here, or the line is indented further than the one above allows.", "Put a value that holds ‘: ’ in quotes, or mend the indentation."),
            _ when Has("unexpected end of stream") || Has("found unexpected end") => ("A quote that opens here is never closed.", "Close the quote."),
            _ when Has("wrong indentation") => ("A quote that opens here is not closed on its line.", "Close the quote."),
            _ when Has("quoted scalar") && Has("surrogates") => ("The text in quotes holds half a character.", "Take the \\u escape out."),
            _ when Has("escape") => ("The text in double quotes holds a backslash that YAML does not understand.", "Use single quotes, or write two backslashes."),
            _ when Has("quoted scalar") => ("A quote that opens here is not closed.", "Close the quote."),
            _ when Has("expected '-' indicator") => ("This line does not fit the list above it.", "Begin each item with ‘- ’ in the same column, or mend the indentation."),
            _ when Has("did not find expected key") || Has("expected <document start>") || Has("could not find expected ':'") || Has("simple key") =>
                ("Here should stand ‘key: value’, in line with the keys above it.", "Check the ‘: ’ and the indentation of this line and the one above."),
            _ when Has("flow sequence") || Has("']'") => ("A list opened with ‘[’ is not closed, or a comma is missing.", "Close it with ‘]’ and put commas between the items."),
            _ when Has("flow mapping") || Has("'}'") => ("A mapping opened with ‘{’ is not closed, or a comma is missing.", "Close it with ‘}’ and put commas between the entries."),
            _ when Has("node content") || Has("flow") => ("A comma, ‘[’ or ‘{’ is out of place here.", "Check the brackets and commas of this line."),
            _ when Has("incompatible YAML") || Has("directive") => ("The line that begins with ‘%’ is not understood.", "Leave it out."),
            _ when Has("tag") => ("A ‘!’ begins a type mark, which means nothing in a workflow.", "Leave it out, or put the value in quotes."),
            _ when Has("anchor") || Has("alias") => ("A mark with ‘&’ or a repeat with ‘*’ is not written right.", "Put a value that begins with ‘&’ or ‘*’ in quotes."),
            _ when Has("block scalar") => ("A block of text after ‘|’ or ‘>’ is not indented right.", "Indent its lines alike, further than the key."),
            _ => ($"The YAML cannot be read here: {said.TrimEnd('.')}.", "Check the indentation, quotes and brackets of this line and the one above."),
        };

        bool Has(string part) => said.Contains(part, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>The nearest line, from the given one upwards, in which <c>: #</c> and six hexadecimal digits follow an open brace.</summary>
    private static int? ColourAbove(string text, int line)
    {
        for (var candidate = line; candidate >= 1 && candidate >= line - 3; candidate--)
        {
            var written = LineAt(text, candidate);
            var hash = written.IndexOf(": #", StringComparison.Ordinal);
            if (hash >= 0 && written.AsSpan(0, hash).Contains('{') && written.Length >= hash + 9 && IsHex(written.AsSpan(hash + 3, 6)))
                return candidate;
        }

        return null;
    }

    private static bool IsHex(ReadOnlySpan<char> digits)
    {
        foreach (var digit in digits)
        {
            if (!char.IsAsciiHexDigit(digit))
                return false;
        }

        return true;
    }

    /// <summary>A line, from 1, without its end; empty beyond the last.</summary>
    private static string LineAt(string text, int line)
    {
        var start = 0;
        for (var i = 1; i < line; i++)
        {
            var end = text.IndexOf('\n', start);
            if (end < 0)
                return "";
            start = end + 1;
        }

        var next = text.IndexOf('\n', start);
        return (next < 0 ? text[start..] : text[start..next]).TrimEnd('\r');
    }
}
