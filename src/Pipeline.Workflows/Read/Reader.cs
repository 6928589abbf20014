using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>What became of reading one file.</summary>
/// <param name="Tree">The file as written; null if it could not be read to its end. It is there beside small mistakes, such as a key given
/// twice, so that binding can tell its own in the same go.</param>
/// <param name="Findings">All mistakes in its writing, in file order.</param>
public sealed record Reading(SyntaxTree? Tree, Sequence<Finding> Findings);

/// <summary>The first stage: text to syntax tree. Pure; never throws on what a file holds.</summary>
public static class Reader
{
    /// <summary>
    /// Reads the YAML of one workflow file. After a mistake that ends the YAML, reading goes on at the next key at the start of a
    /// line, so that mistakes further down are told in the same go; such a file gives no tree.
    /// </summary>
    public static Reading Read(SourceText source)
    {
        ArgumentNullException.ThrowIfNull(source);
        var text = source.Text.StartsWith('\uFEFF') ? source.Text[1..] : source.Text;
        if (text.Length > ReadingLimits.LargestFileBytes)
            return new Reading(null, [SourceText.TooLarge(source.Name, text.Length)]);

        var findings = new FindingList();
        var builder = new TreeBuilder(source.Name, text, 0, 0, findings, isWholeFile: true);
        var root = builder.Build();
        if (builder.GoOnAtLine is { } goOn)
        {
            ReadOn(source.Name, text, goOn, findings);
            root = null;
        }
        else if (root is null or TextNode { IsMissing: true } && findings.IsEmpty)
        {
            findings.Error(new Place(source.Name, 1, 1), "The file is empty.", "Begin with ‘batch: ’ and its name; docs/workflow-reference.md shows the rest.");
            root = null;
        }

        var tree = root is null ? null : new SyntaxTree(source.Name, root) { IsSound = !findings.HasErrors };
        return new Reading(tree, findings.ToSequence());
    }

    /// <summary>Looks for further mistakes from a line on, once the YAML could not be read on above it.</summary>
    private static void ReadOn(string file, string text, int from, FindingList findings)
    {
        var (offset, line) = (0, 0);
        // Each attempt may look at all that is left, so attempts are paid for by what they look at.
        var budget = 2 * text.Length + 1_000_000;
        while (NextSection(text, ref offset, ref line, from) && (budget -= text.Length - offset) > 0)
        {
            var builder = new TreeBuilder(file, text, offset, line, findings, isWholeFile: false);
            builder.Build();
            if (builder.GoOnAtLine is not { } again || findings.IsFull)
                return;
            from = again;
        }
    }

    /// <summary>Moves to the next line, the given one (from 1) or one below it, that begins with a key in its first column.</summary>
    private static bool NextSection(string text, ref int offset, ref int line, int from)
    {
        while (true)
        {
            var end = text.IndexOf('\n', offset);
            if (end < 0)
                return false;
            (offset, line) = (end + 1, line + 1);
            if (line + 1 >= from && offset < text.Length && char.IsAsciiLetterLower(text[offset]))
                return true;
        }
    }
}
