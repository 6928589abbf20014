using System.Text;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Makes changes to a text.</summary>
public static class Editing
{
    /// <summary>The text with some changes made; a byte order mark it may begin with stays and is not counted by places.</summary>
    /// <param name="source">The text.</param>
    /// <param name="edits">In the order of their places, none reaching into another; all of this file.</param>
    /// <exception cref="ArgumentException">An edit lies outside the text or reaches into the one before it.</exception>
    public static SourceText Apply(SourceText source, IEnumerable<Edit> edits)
    {
        ArgumentNullException.ThrowIfNull(source);
        ArgumentNullException.ThrowIfNull(edits);
        var mark = source.Text.StartsWith('\uFEFF') ? 1 : 0;
        var text = source.Text[mark..];
        var lines = new TextLines(text);
        var made = new StringBuilder(source.Text.Length + 256);
        made.Append(source.Text, 0, mark);
        var at = 0;
        foreach (var edit in edits)
        {
            var (from, to) = (lines.Offset(edit.From.Line, edit.From.Column), lines.Offset(edit.To.Line, edit.To.Column));
            if (from < at || to < from || to > text.Length)
                throw new ArgumentException($"The edit at {edit.From} does not fit the text or the edit before it.", nameof(edits));
            made.Append(text, at, from - at).Append(edit.Text);
            at = to;
        }

        return source with { Text = made.Append(text, at, text.Length - at).ToString() };
    }

    /// <summary>True if two sets of changes to one file touch: one reaches into the other, or both change the same place.</summary>
    public static bool Touch(Sequence<Edit> one, Sequence<Edit> other)
    {
        foreach (var left in one)
        {
            foreach (var right in other)
            {
                if (left.From.File == right.From.File && left.From.CompareTo(right.To) <= 0 && right.From.CompareTo(left.To) <= 0)
                    return true;
            }
        }

        return false;
    }
}
