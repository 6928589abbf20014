using System.Globalization;
using System.Runtime.InteropServices;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>A list or mapping whose end has not been read yet. Used again and again, one for each depth.</summary>
internal sealed class OpenNode
{
    /// <summary>Small mappings find a repeated key faster by looking than by hashing.</summary>
    private const int FewKeys = 12;

    private readonly List<Entry> entries = [];
    private readonly List<SyntaxNode> items = [];
    private readonly Dictionary<string, TextNode> keys = new(StringComparer.Ordinal);
    private int line;
    private int column;
    private long weight;
    private bool isRepeat;

    public bool IsMapping { get; private set; }

    /// <summary>True in brackets or braces.</summary>
    public bool IsFlow { get; private set; }

    /// <summary>The name by which it can be repeated, or null.</summary>
    public string? Anchor { get; private set; }

    public TextNode? Key { get; private set; }

    public void Begin(bool isMapping, bool isFlow, int line, int column, string? anchor)
    {
        (IsMapping, IsFlow, this.line, this.column, Anchor) = (isMapping, isFlow, line, column, anchor);
        (weight, Key) = (1, null);
        entries.Clear();
        items.Clear();
        if (keys.Count > 0)
            keys.Clear();
    }

    public Place PlaceIn(string file) => new(file, line, column);

    /// <summary>False if the whole has grown beyond any limit.</summary>
    public bool Add(SyntaxNode node, FindingList findings)
    {
        weight += node.Weight;
        if (!IsMapping)
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
                entries.Add(new Entry(Key, node));
            Key = null;
        }

        return weight <= ReadingLimits.MostNodes;
    }

    public SyntaxNode Close(string file, (int Line, int Column) end) => IsMapping
        ? new MappingNode(file, line, column, Sequence.Create<Entry>(CollectionsMarshal.AsSpan(entries)), (int)weight) { End = end, IsFlow = IsFlow }
        : new ListNode(file, line, column, Sequence.Create<SyntaxNode>(CollectionsMarshal.AsSpan(items)), (int)weight) { End = end, IsFlow = IsFlow };

    /// <summary>
    /// In braces <c>a: 2,5 cm²</c> is an entry <c>a: 2</c> and a key <c>5 cm²</c> without a value. The number is read as it was meant,
    /// so that the comma is the only mistake told.
    /// </summary>
    private bool IsDecimalComma(TextNode key, SyntaxNode value, FindingList findings)
    {
        if (value is not TextNode { IsMissing: true } || key.Text.Length == 0 || !char.IsAsciiDigit(key.Text[0]) || entries is not [.., { Value: TextNode { Style: TextStyle.Plain } whole } before])
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
        var first = entries.Count < FewKeys ? Look(key.Text) : Known(key);
        isRepeat = first is not null;
        if (first is not null)
            findings.Error(key.Place, $"The key ‘{key.Text}’ is given twice.", "Keep one of the two, or give the other another name.", new Related(first.Place, "first given here"));
    }

    private TextNode? Look(string name)
    {
        foreach (var entry in entries)
        {
            if (entry.Key.Text == name)
                return entry.Key;
        }

        return null;
    }

    private TextNode? Known(TextNode key)
    {
        if (keys.Count == 0)
        {
            foreach (var entry in entries)
                keys.TryAdd(entry.Key.Text, entry.Key);
        }

        return keys.TryAdd(key.Text, key) ? null : keys[key.Text];
    }
}
