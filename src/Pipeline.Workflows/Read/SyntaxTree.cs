using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>A file as it was written: keys in order, every scalar as text with its place. Nothing in it has a meaning yet.</summary>
/// <param name="File">The file's name as the painter gave it.</param>
/// <param name="Root">What the file holds.</param>
public sealed record SyntaxTree(string File, SyntaxNode Root)
{
    /// <summary>False if mistakes were found while reading: the tree then serves only to find further ones, and binds to no batch.</summary>
    public bool IsSound { get; init; } = true;
}

/// <summary>A piece of a file: a text, a list or a mapping. Immutable; one node may be reached by several ways (a YAML alias).</summary>
public abstract class SyntaxNode
{
    private protected SyntaxNode(string file, int line, int column) => (File, Line, Column) = (file, line, column);

    /// <summary>The file's name as the painter gave it.</summary>
    public string File { get; }

    /// <summary>From 1.</summary>
    public int Line { get; }

    /// <summary>From 1.</summary>
    public int Column { get; }

    /// <summary>Where it begins.</summary>
    public Place Place => new(File, Line, Column);

    /// <summary>
    /// Of a text without a block of lines, the line and column after its last character; of a list or mapping in brackets or braces, those
    /// of the closing one. That of anything else lies somewhere up to what comes next.
    /// </summary>
    internal (int Line, int Column) End { get; init; }

    /// <summary>True for a list or mapping in brackets or braces.</summary>
    internal bool IsFlow { get; init; }

    /// <summary>In the painter's words: <c>a list</c>.</summary>
    public abstract string Kind { get; }

    /// <summary>How many nodes it is with all aliases written out, itself included.</summary>
    internal abstract int Weight { get; }
}

/// <summary>How a text is written.</summary>
public enum TextStyle
{
    /// <summary>Without quotes, on one or more lines.</summary>
    Plain,

    /// <summary>In single or double quotes.</summary>
    Quoted,

    /// <summary>As a block of lines after <c>|</c> or <c>&gt;</c>.</summary>
    Block,
}

/// <summary>A scalar, as text: <c>19:00</c> and <c>yes</c> are what is written, nothing more.</summary>
public sealed class TextNode : SyntaxNode
{
    internal TextNode(string file, int line, int column, string text, TextStyle style)
        : base(file, line, column) => (Text, Style) = (text, style);

    /// <summary>The text, without quotes.</summary>
    public string Text { get; }

    /// <summary>How it is written.</summary>
    public TextStyle Style { get; }

    /// <summary>True if nothing is written there at all.</summary>
    public bool IsMissing => Text.Length == 0 && Style == TextStyle.Plain;

    /// <inheritdoc/>
    public override string Kind => IsMissing ? "nothing" : "a text";

    internal override int Weight => 1;
}

/// <summary>A list.</summary>
public sealed class ListNode : SyntaxNode
{
    internal ListNode(string file, int line, int column, Sequence<SyntaxNode> items, int weight)
        : base(file, line, column) => (Items, Weight) = (items, weight);

    /// <summary>Its items in file order.</summary>
    public Sequence<SyntaxNode> Items { get; }

    /// <inheritdoc/>
    public override string Kind => "a list";

    internal override int Weight { get; }
}

/// <summary>A mapping of keys to values; no key occurs twice.</summary>
public sealed class MappingNode : SyntaxNode
{
    internal MappingNode(string file, int line, int column, Sequence<Entry> entries, int weight)
        : base(file, line, column) => (Entries, Weight) = (entries, weight);

    /// <summary>Its entries in file order.</summary>
    public Sequence<Entry> Entries { get; }

    /// <inheritdoc/>
    public override string Kind => "a mapping of keys to values";

    internal override int Weight { get; }

    /// <summary>The value of a key, or null. Walks the entries; meant for small mappings.</summary>
    public SyntaxNode? this[string key]
    {
        get
        {
            foreach (var entry in Entries)
            {
                if (entry.Key.Text == key)
                    return entry.Value;
            }

            return null;
        }
    }
}

/// <summary>A key and its value.</summary>
/// <param name="Key">The key with its place.</param>
/// <param name="Value">The value; of <c>key:</c> with nothing after it, a missing text.</param>
public readonly record struct Entry(TextNode Key, SyntaxNode Value);
