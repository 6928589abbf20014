using System.Buffers;
using System.Globalization;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>What every part of the binder has at hand: a place for findings, and the plain questions asked of a node.</summary>
internal sealed class Desk(FindingList findings)
{
    private const int MostNamesShown = 16;
    private static readonly SearchValues<char> WideSpaces = SearchValues.Create("\u00A0\u2007\u2009\u202F");
    private static readonly SearchValues<char> LineEnds = SearchValues.Create("\n\r\t");
    private readonly Nearest nearest = new();

    /// <summary>Keys without a meaning, with the known key each was probably meant to be.</summary>
    private readonly Dictionary<TextNode, string> mistyped = [];

    /// <summary>How many findings there are so far.</summary>
    public int FindingCount => findings.Count;

    public bool HasErrors => findings.HasErrors;

    /// <summary>True once there are so many findings that no more are kept.</summary>
    public bool IsFull => findings.IsFull;

    public void Error(SyntaxNode at, string message, string? remedy = null, params ReadOnlySpan<Related> related) =>
        findings.Error(at.Place, message, remedy, related);

    public void Warning(SyntaxNode at, string message, string remedy) => findings.Warning(at.Place, message, remedy);

    public void Note(SyntaxNode at, string message, string remedy) => findings.Note(at.Place, message, remedy);

    /// <summary>The text of a node, or null and a finding if it is something else or nothing.</summary>
    /// <param name="node">The node.</param>
    /// <param name="expected">What should stand there, with an article: <c>the name of a paint</c>.</param>
    public string? Text(SyntaxNode node, string expected)
    {
        if (node is TextNode { Text.Length: > 0 } text && !string.IsNullOrWhiteSpace(text.Text))
            return Plain(text.Text).Trim();
        Error(node, node is TextNode ? "Nothing is written here." : $"Here stands {node.Kind}.", $"Write {expected}.");
        return null;
    }

    /// <summary>What a node says when read in some way; false and a finding if it does not say it.</summary>
    public bool Says<T>(SyntaxNode node, Func<string, Written<T>> read, string expected, out T value)
    {
        value = default!;
        if (node is not TextNode text)
        {
            Error(node, $"Here stands {node.Kind}.", $"Write {expected}.");
            return false;
        }

        var written = read(Plain(text.Text));
        if (written.Wrong is { } wrong)
        {
            Error(node, wrong, $"Write {expected}.");
            return false;
        }

        value = written.Value;
        return true;
    }

    /// <summary>What a node says, or null and a finding.</summary>
    public T? Said<T>(SyntaxNode node, Func<string, Written<T>> read, string expected)
        where T : struct => Says(node, read, expected, out var value) ? value : null;

    /// <summary>A yes or no; no and a finding if it is neither.</summary>
    public bool YesOrNo(SyntaxNode node) => Says(node, WordText.YesOrNo, WordText.YesOrNoExpected, out var value) && value;

    /// <summary>The mapping a node is, or null and a finding.</summary>
    public MappingNode? Mapping(SyntaxNode node, string expected)
    {
        if (node is MappingNode mapping)
            return mapping;
        Error(node, node is TextNode { IsMissing: true } ? "Nothing is written here." : $"Here stands {node.Kind}.", $"Write {expected}.");
        return null;
    }

    /// <summary>The items of a list; of anything else, the node alone; of nothing, a finding.</summary>
    public Sequence<SyntaxNode> OneOrMore(SyntaxNode node, string expected)
    {
        if (node is ListNode { Items.Count: > 0 } list)
            return list.Items;
        if (node is not ListNode && node is not TextNode { IsMissing: true })
            return [node];
        Error(node, node is ListNode ? "The list is empty." : "Nothing is written here.", $"Write {expected}.");
        return [];
    }

    /// <summary>A new name for something, checked so that it can be told from others by sight; null and a finding if it cannot.</summary>
    public string? NewName(SyntaxNode node, string what)
    {
        var name = Text(node, $"a name for {what}");
        if (name is null)
            return null;
        if (name.Length > ReadingLimits.LongestName)
            Error(node, string.Create(CultureInfo.InvariantCulture, $"This name has {name.Length:N0} characters."), string.Create(CultureInfo.InvariantCulture, $"Give {what} a name of at most {ReadingLimits.LongestName} characters."));
        else if (name.AsSpan().ContainsAny(LineEnds))
            Error(node, "This name goes over several lines or holds a tab.", $"Give {what} a name on one line.");
        else if (name == "all")
            Error(node, "‘all’ stands for every area and cannot be a name.", $"Give {what} another name.");
        else
            return name;
        return null;
    }

    /// <summary>Complains about a key that has no meaning there.</summary>
    public void UnknownKey(TextNode key, string of, IEnumerable<string> known)
    {
        var names = known.ToList();
        var (near, isOnly) = nearest.Find(key.Text, names);
        if (near is not null)
            mistyped.TryAdd(key, near);
        findings.Error(key.Place, $"‘{NumberText.Shown(key.Text)}’ is no key of {of}.", Meant(near, names, "Known keys: "), isOnly ? Renamed(key, near) : null);
    }

    /// <summary>Complains about a name that names nothing.</summary>
    public void UnknownName(SyntaxNode at, string name, string what, IEnumerable<string> known, string? otherwise = null)
    {
        var names = known.ToList();
        var (near, isOnly) = nearest.Find(name, names);
        findings.Error(at.Place, $"There is no {what} called ‘{NumberText.Shown(name)}’.", names.Count == 0 ? otherwise ?? $"The file names no {what}." : Meant(near, names, "Known: "), isOnly ? Renamed(at, near) : null);
    }

    /// <summary>Warns of a name that nothing uses, if it was probably meant to be another; a name like no other may be there for another day.</summary>
    public void UnusedName(TextNode at, string of, string what, IEnumerable<string> known)
    {
        if (nearest.To(Plain(at.Text), known) is { } near)
            findings.Warning(at.Place, $"{of} uses no {what} called ‘{NumberText.Shown(at.Text)}’.", $"Did you mean ‘{near}’?");
    }

    /// <summary>Complains that a key is missing, unless one that was probably meant to be it has been complained about.</summary>
    /// <param name="within">Where the key should be.</param>
    /// <param name="of">What lacks it: <c>The kit</c>.</param>
    /// <param name="key">The key.</param>
    /// <param name="expected">What it would hold, with an article.</param>
    /// <param name="at">Where to say so; at the beginning if not given.</param>
    public void MissingKey(MappingNode within, string of, string key, string expected, SyntaxNode? at = null)
    {
        foreach (var entry in within.Entries)
        {
            if (mistyped.Count > 0 && mistyped.TryGetValue(entry.Key, out var meant) && meant == key)
                return;
        }

        Error(at ?? within, $"{of} has no ‘{key}’.", $"Add ‘{key}: ’ and {expected}.");
    }

    /// <summary>A text with every space an ordinary one, so that names that look alike are alike.</summary>
    public static string Plain(string text)
    {
        if (!text.AsSpan().ContainsAny(WideSpaces))
            return text;
        return string.Create(text.Length, text, static (characters, from) =>
        {
            for (var i = 0; i < from.Length; i++)
                characters[i] = from[i] is '\u00A0' or '\u2007' or '\u2009' or '\u202F' ? ' ' : from[i];
        });
    }

    private static Mend.Rename? Renamed(SyntaxNode at, string? near) => near is null ? null : new Mend.Rename(at.Place, near);

    private static string Meant(string? near, List<string> known, string before)
    {
        if (near is not null)
            return $"Did you mean ‘{near}’?";
        var shown = string.Join(", ", known.Take(MostNamesShown));
        return before + shown + (known.Count > MostNamesShown ? " …" : ".");
    }
}
