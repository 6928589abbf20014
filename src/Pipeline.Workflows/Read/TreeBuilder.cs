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
    private readonly Stack<Open> open = new();
    private readonly Dictionary<string, SyntaxNode?> anchors = new(StringComparer.Ordinal);
    private SyntaxNode? root;
    private int nodes;
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
        catch (InvalidOperationException) when (open.TryPeek(out var unclosed) && unclosed.IsFlow)
        {
            // YamlDotNet 18.1 says no more than this when a line after an open bracket is indented less than the bracket's own key.
            YamlMistakes.DescribeUnclosed(unclosed.PlaceIn(file), unclosed.IsMapping, text, lastLine, findings);
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
                Place(Text(scalar), scalar.Anchor);
                break;
            case MappingStart or SequenceStart:
                Begin((NodeEvent)what);
                break;
            case MappingEnd or SequenceEnd:
                var closed = open.Pop();
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
        if (open.Count == ReadingLimits.DeepestNesting)
        {
            findings.Error(PlaceOf(start), string.Create(CultureInfo.InvariantCulture, $"Lists and mappings are nested more than {ReadingLimits.DeepestNesting} deep here."), "Check the brackets and the indentation above.");
            Stop(int.MaxValue);
            return;
        }

        if (open.Count > 0 && open.Peek() is { IsMapping: true, Key: null })
        {
            findings.Error(PlaceOf(start), $"A key is a text, but here stands {(isMapping ? "a mapping" : "a list")}.", "Write the key as a plain word.");
            Stop(LineOf(start) + 1);
            return;
        }

        if (!start.Anchor.IsEmpty)
            anchors[start.Anchor.Value] = null;
        open.Push(new Open(isMapping, IsFlow(start), LineOf(start), ColumnOf(start), start.Anchor));
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
        Place(node, AnchorName.Empty);
    }

    private void Place(SyntaxNode node, AnchorName anchor)
    {
        if (!anchor.IsEmpty)
            anchors[anchor.Value] = node;
        if (++nodes > ReadingLimits.MostNodes)
        {
            findings.Error(node.Place, string.Create(CultureInfo.InvariantCulture, $"The file holds more than {ReadingLimits.MostNodes:N0} keys and values, repeats with ‘*’ counted each time."), "Part the batch into several files, or write schemes in place of repeats.");
            Stop(int.MaxValue);
            return;
        }

        if (open.Count == 0)
            root ??= node;
        else if (!open.Peek().Add(node, findings))
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
        var node = new TextNode(file, LineOf(scalar), ColumnOf(scalar), scalar.Value, style) { End = EndOf(scalar) };
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

    /// <summary>A list or mapping whose end has not been read yet.</summary>
    private sealed class Open(bool isMapping, bool isFlow, int line, int column, AnchorName anchor)
    {
        /// <summary>Small mappings find a repeated key faster by looking than by hashing.</summary>
        private const int FewKeys = 12;

        private readonly List<Entry>? entries = isMapping ? new List<Entry>(4) : null;
        private readonly List<SyntaxNode>? items = isMapping ? null : new List<SyntaxNode>(4);
        private Dictionary<string, TextNode>? keys;
        private long weight = 1;
        private bool isRepeat;

        public bool IsMapping => isMapping;

        /// <summary>True in brackets or braces.</summary>
        public bool IsFlow => isFlow;

        public AnchorName Anchor => anchor;

        public TextNode? Key { get; private set; }

        public Place PlaceIn(string file) => new(file, line, column);

        /// <summary>False if the whole has grown beyond any limit.</summary>
        public bool Add(SyntaxNode node, FindingList findings)
        {
            weight += node.Weight;
            if (items is not null)
            {
                items.Add(node);
            }
            else if (Key is null)
            {
                Key = node as TextNode ?? new TextNode(node.File, node.Line, node.Column, "", TextStyle.Quoted);
                CheckKey(Key, findings);
            }
            else
            {
                if (!isRepeat && !IsDecimalComma(Key, node, findings))
                    entries!.Add(new Entry(Key, node));
                Key = null;
            }

            return weight <= ReadingLimits.MostNodes;
        }

        public SyntaxNode Close(string file, (int Line, int Column) end) => items is not null
            ? new ListNode(file, line, column, items, (int)weight) { End = end, IsFlow = isFlow }
            : new MappingNode(file, line, column, entries!, (int)weight) { End = end, IsFlow = isFlow };

        /// <summary>
        /// In braces <c>a: 2,5 cm²</c> is an entry <c>a: 2</c> and a key <c>5 cm²</c> without a value. The number is read as it was meant,
        /// so that the comma is the only mistake told.
        /// </summary>
        private bool IsDecimalComma(TextNode key, SyntaxNode value, FindingList findings)
        {
            if (value is not TextNode { IsMissing: true } || !char.IsAsciiDigit(key.Text.FirstOrDefault()) || entries is not [.., { Value: TextNode { Style: TextStyle.Plain } whole } before])
                return false;
            if (whole.Line != key.Line || whole.Column + whole.Text.Length + 1 != key.Column || !whole.Text.All(char.IsAsciiDigit))
                return false;
            findings.Error(whole.Place, $"The comma in ‘{whole.Text},{key.Text}’ parts two entries.", $"Write the number with a point: {whole.Text}.{key.Text}.");
            entries[^1] = before with { Value = new TextNode(whole.File, whole.Line, whole.Column, $"{whole.Text}.{key.Text}", TextStyle.Plain) };
            return true;
        }

        private void CheckKey(TextNode key, FindingList findings)
        {
            if (key.Text.Length > ReadingLimits.LongestName)
                findings.Error(key.Place, string.Create(CultureInfo.InvariantCulture, $"This key has {key.Text.Length:N0} characters; a name has at most {ReadingLimits.LongestName}."));
            if (key.Text == "<<" && key.Style == TextStyle.Plain)
                findings.Error(key.Place, "Mappings are not merged with ‘<<’ in a workflow.", "Write the keys out, or make a scheme of the steps they share.");
            var first = keys is null && entries!.Count < FewKeys ? Look(key.Text) : Known(key);
            isRepeat = first is not null;
            if (first is not null)
                findings.Error(key.Place, $"The key ‘{key.Text}’ is given twice.", "Keep one of the two, or give the other another name.", new Related(first.Place, "first given here"));
        }

        private TextNode? Look(string name)
        {
            foreach (var entry in entries!)
            {
                if (entry.Key.Text == name)
                    return entry.Key;
            }

            return null;
        }

        private TextNode? Known(TextNode key)
        {
            if (keys is null)
            {
                keys = new Dictionary<string, TextNode>(StringComparer.Ordinal);
                foreach (var entry in entries!)
                    keys.TryAdd(entry.Key.Text, entry.Key);
            }

            return keys.TryAdd(key.Text, key) ? null : keys[key.Text];
        }
    }
}
