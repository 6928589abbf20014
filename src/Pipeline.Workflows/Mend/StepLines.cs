namespace Pipeline.Workflows;

/// <summary>The lines of a file that a step takes, and how it is set there.</summary>
/// <param name="Comment">First line of the comment that stands straight above it, or <paramref name="First"/> if there is none.</param>
/// <param name="First">The line of its dash.</param>
/// <param name="Last">Its last line, comments at the depth of its keys included.</param>
/// <param name="Lead">What stands before its first key: spaces, the dash, spaces.</param>
internal sealed record StepLines(int Comment, int First, int Last, string Lead)
{
    /// <summary>Columns before its keys.</summary>
    public int KeyIndent => Lead.Length;

    /// <summary>The lines of a step; null if it is not an entry of a list with a dash and lines of its own.</summary>
    public static StepLines? Of(StepNode step, TextLines lines)
    {
        var first = step.Mapping.Line;
        var column = step.Mapping.Column;
        if (step.List.IsFlow || first > lines.Count || lines[first].Length < column)
            return null;
        var lead = lines[first][..(column - 1)].ToString();
        var dash = lead.Length - lead.TrimStart(' ').Length;
        if (dash >= lead.Length || lead[dash] != '-' || lead[(dash + 1)..].Trim(' ').Length > 0 || dash + 1 == lead.Length)
            return null;

        var last = first;
        for (var line = first + 1; line <= lines.Count; line++)
        {
            if (lines.IsBlank(line))
                continue;
            if (lines.Indent(line) <= dash || (lines.IsComment(line) && lines.IsBlank(line - 1)))
                break;
            last = line;
        }

        // a comment further out, or after a blank line, belongs to what comes next
        var comment = first;
        while (comment > 1 && lines.IsComment(comment - 1) && lines.Indent(comment - 1) == dash)
            comment--;
        return new StepLines(comment, first, last, lead);
    }
}
