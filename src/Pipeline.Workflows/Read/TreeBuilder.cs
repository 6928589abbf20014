using System.Globalization;
using Pipeline.Abstractions;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Pipeline.Workflows;

/// <summary>
/// Builds nodes from the events of the YAML parser. Keeps its own stack, so that deep nesting is a finding and not a crash.
/// </summary>
internal sealed class TreeBuilder
{
    private readonly string file;
    private readonly string text;
    private readonly int lineOffset;
    private readonly bool isWholeFile;
    private readonly FindingList findings;
    private readonly TextReader reader;
    private readonly bool hasUnseenCharacters;
    private readonly List<OpenNode> open = [];
    private readonly RepeatedTexts texts = new();
    private readonly Dictionary<string, SyntaxNode?> anchors = new(StringComparer.Ordinal);
    private SyntaxNode? root;
    private int nodes;
    private int depth;
    private int documents;
    private int lastLine;

    /// <param name="file">For places.</param>
    /// <param name="text">The whole text.</param>
    /// <param name="offset">Where to begin in it.</param>
    /// <param name="lineOffset">How many lines lie before that.</param>
    /// <param name="findings">Where mistakes go.</param>
    /// <param name="isWholeFile">False if what lies before was given up: anchors may then be missing without fault.</param>
    public TreeBuilder(string file, string text, int offset, int lineOffset, FindingList findings, bool isWholeFile)
    {
        (this.file, this.text, this.lineOffset, this.findings, this.isWholeFile) = (file, text, lineOffset, findings, isWholeFile);
        lastLine = lineOffset + 1;
        reader = offset == 0 ? new StringReader(text) : new StringReader(text[offset..]);
        hasUnseenCharacters = UnseenCharacters.IndexIn(text.AsSpan(offset)) >= 0;
    }

    /// <summary>The line (from 1) from which reading may go on after the YAML could not be read; null if it was read to its end.</summary>
    public int? GoOnAtLine { get; private set; }

    /// <summary>The root, or null if there is none.</summary>
    public SyntaxNode? Build()
    {
        try
        {
            var parser = new Parser(reader);
            while (GoOnAtLine is null && parser.MoveNext())
            {
                Take(parser.Current!);
                lastLine = (int)parser.Current!.End.Line + lineOffset;
            }
        }
        catch (YamlException mistake)
        {
            Stop(YamlMistakes.Describe(mistake, file, text, lineOffset, findings));
        }
        catch (InvalidOperationException) when (depth > 0 && open[depth - 1].IsFlow)
        {
            // YamlDotNet 18.1 says no more than this when a line after an open bracket is indented less than the bracket's own key.
            YamlMistakes.DescribeUnclosed(open[depth - 1].PlaceIn(file), open[depth - 1].IsMapping, text, lastLine, findings);
            Stop(lastLine + 1);
        }
        catch (Exception mistake) when (mistake is InvalidOperationException or ArgumentException or FormatException or IndexOutOfRangeException or OverflowException)
        {
            // The YAML library's own slips must not end the program.
            findings.Error(new Place(file, lastLine, 1), "The YAML below this line cannot be read.", "Check the indentation, quotes and brackets here.");
            Stop(lastLine + 1);
        }

        return root;
    }

    private void Stop(int line) => GoOnAtLine = line;

    private void Take(ParsingEvent what)
    {
        switch (what)
        {
            case Scalar scalar:
                CheckTag(scalar.Tag, scalar, "str");
                Place(Text(scalar), scalar.Anchor.IsEmpty ? null : scalar.Anchor.Value);
                break;
            case MappingStart or SequenceStart:
                Begin((NodeEvent)what);
                break;
            case MappingEnd or SequenceEnd:
                var closed = open[--depth];
                Place(closed.Close(file, EndOf(what)), closed.Anchor);
                break;
            case AnchorAlias alias:
                TakeAlias(alias);
                break;
            case DocumentStart when ++documents > 1 && isWholeFile:
                findings.Error(PlaceOf(what), "A second document begins here; a workflow file holds one.", "Put it into a file of its own; several files can be planned together.");
                Stop(int.MaxValue);
                break;
        }
    }

    private void Begin(NodeEvent start)
    {
        var isMapping = start is MappingStart;
        CheckTag(start.Tag, start, isMapping ? "map" : "seq");
        if (depth == ReadingLimits.DeepestNesting)
        {
            findings.Error(PlaceOf(start), string.Create(CultureInfo.InvariantCulture, $"Lists and mappings are nested more than {ReadingLimits.DeepestNesting} deep here."), "Check the brackets and the indentation above.");
            Stop(int.MaxValue);
            return;
        }

        if (depth > 0 && open[depth - 1] is { IsMapping: true, Key: null })
        {
            findings.Error(PlaceOf(start), $"A key is a text, but here stands {(isMapping ? "a mapping" : "a list")}.", "Write the key as a plain word.");
            Stop(LineOf(start) + 1);
            return;
        }

        var anchor = start.Anchor.IsEmpty ? null : start.Anchor.Value;
        if (anchor is not null)
            anchors[anchor] = null;
        if (depth == open.Count)
            open.Add(new OpenNode());
        open[depth++].Begin(isMapping, IsFlow(start), LineOf(start), ColumnOf(start), anchor);
    }

    private void TakeAlias(AnchorAlias alias)
    {
        if (!anchors.TryGetValue(alias.Value.Value, out var node))
        {
            if (isWholeFile)
                findings.Error(PlaceOf(alias), $"‘*{alias.Value.Value}’ repeats something that no ‘&{alias.Value.Value}’ above it marks.", "Mark what is meant with ‘&’ and the same name, or write it out.");
            node = new TextNode(file, LineOf(alias), ColumnOf(alias), "", TextStyle.Plain);
        }
        else if (node is null)
        {
            findings.Error(PlaceOf(alias), $"‘*{alias.Value.Value}’ stands inside the very thing it repeats.", "Write it out.");
            node = new TextNode(file, LineOf(alias), ColumnOf(alias), "", TextStyle.Plain);
        }

        nodes += node.Weight - 1;
        Place(node, null);
    }

    private void Place(SyntaxNode node, string? anchor)
    {
        if (anchor is not null)
            anchors[anchor] = node;
        if (++nodes > ReadingLimits.MostNodes)
        {
            findings.Error(node.Place, string.Create(CultureInfo.InvariantCulture, $"The file holds more than {ReadingLimits.MostNodes:N0} keys and values, repeats with ‘*’ counted each time."), "Part the batch into several files, or write schemes in place of repeats.");
            Stop(int.MaxValue);
            return;
        }

        if (depth == 0)
            root ??= node;
        else if (!open[depth - 1].Add(node, findings))
            Stop(int.MaxValue);
    }

    private TextNode Text(Scalar scalar)
    {
        var style = scalar.Style switch
        {
            ScalarStyle.SingleQuoted or ScalarStyle.DoubleQuoted => TextStyle.Quoted,
            ScalarStyle.Literal or ScalarStyle.Folded => TextStyle.Block,
            _ => TextStyle.Plain,
        };
        var node = new TextNode(file, LineOf(scalar), ColumnOf(scalar), texts.One(scalar.Value), style) { End = EndOf(scalar) };
        if (hasUnseenCharacters || scalar.Style == ScalarStyle.DoubleQuoted)
        {
            var unseen = UnseenCharacters.IndexIn(scalar.Value);
            if (unseen >= 0)
                findings.Error(node.Place, $"The text that begins here holds {UnseenCharacters.Describe(scalar.Value, unseen)}.", "Take the character out; retype the word if you cannot see it.");
        }

        return node;
    }

    private void CheckTag(TagName tag, NodeEvent node, string usual)
    {
        if (tag.IsEmpty || tag.IsNonSpecific || !isWholeFile)
            return;
        var name = tag.Value;
        const string Core = "tag:yaml.org,2002:";
        if (name == Core + usual || (usual == "str" && name is Core + "int" or Core + "float" or Core + "bool"))
            return;
        var shown = name.StartsWith(Core, StringComparison.Ordinal) ? "!!" + name[Core.Length..] : name;
        findings.Error(PlaceOf(node), $"The type mark ‘{shown}’ means nothing in a workflow.", "Leave it out; what a value is follows from its key.");
    }

    private static bool IsFlow(NodeEvent start) => start is MappingStart { Style: MappingStyle.Flow } or SequenceStart { Style: SequenceStyle.Flow };

    private Place PlaceOf(ParsingEvent what) => new(file, LineOf(what), ColumnOf(what));

    private int LineOf(ParsingEvent what) => (int)what.Start.Line + lineOffset;

    private (int Line, int Column) EndOf(ParsingEvent what) => ((int)what.End.Line + lineOffset, (int)what.End.Column);

    private static int ColumnOf(ParsingEvent what) => (int)what.Start.Column;
}
