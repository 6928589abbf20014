using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>A text by its lines, numbered from 1 as places number them; after a last line end stands one more, empty line.</summary>
internal sealed class TextLines
{
    private readonly string text;
    private readonly List<int> starts = [0];

    public TextLines(string text)
    {
        this.text = text;
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '\n')
                starts.Add(i + 1);
            // YAML readers differ on whether these end a line, so places in such a text cannot be relied on
            else if (text[i] is '\u0085' or '\u2028' or '\u2029' || (text[i] == '\r' && (i + 1 == text.Length || text[i + 1] != '\n')))
                HasOddEnds = true;
        }
    }

    public int Count => starts.Count;

    /// <summary>True if a line may end in other ways than by line feed, with or without carriage return.</summary>
    public bool HasOddEnds { get; }

    /// <summary>A line without its end.</summary>
    public ReadOnlySpan<char> this[int line] => text.AsSpan(starts[line - 1]..(EndOf(line) - LineEnd(line).Length));

    /// <summary>What ends a line; empty for the last.</summary>
    public string LineEnd(int line)
    {
        if (line == Count)
            return "";
        var end = EndOf(line);
        return end >= 2 && end - 2 >= starts[line - 1] && text[end - 2] == '\r' ? "\r\n" : "\n";
    }

    /// <summary>The line end that lines around one have.</summary>
    public string UsualEnd(int line) => LineEnd(line) is { Length: > 0 } own ? own : line > 1 ? LineEnd(line - 1) : "\n";

    /// <summary>True if nothing but spaces and tabs stands on the line.</summary>
    public bool IsBlank(int line) => this[line].Trim(" \t").IsEmpty;

    /// <summary>True if the line holds a comment and nothing else.</summary>
    public bool IsComment(int line) => this[line].TrimStart(" \t").StartsWith('#');

    /// <summary>How many spaces a line begins with.</summary>
    public int Indent(int line) => this[line].Length - this[line].TrimStart(' ').Length;

    /// <summary>Where a place lies in the text.</summary>
    public int Offset(int line, int column) => starts[line - 1] + column - 1;

    /// <summary>The place where a line begins; of the line after the last, the end of the text.</summary>
    public Place Start(string file, int line) => line <= Count ? new Place(file, line, 1) : new Place(file, Count, this[Count].Length + 1);

    private int EndOf(int line) => line == Count ? text.Length : starts[line];
}
