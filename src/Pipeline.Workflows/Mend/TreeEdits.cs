using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>What a tree is to be after a change, and whether a text that was changed reads so.</summary>
internal static class TreeEdits
{
    /// <summary>The tree with one of its nodes given another's place; the node is known to stand there once.</summary>
    public static SyntaxNode With(SyntaxNode root, SyntaxNode old, SyntaxNode by)
    {
        if (ReferenceEquals(root, old))
            return by;
        switch (root)
        {
            case ListNode list:
                for (var i = 0; i < list.Items.Count; i++)
                {
                    var item = With(list.Items[i], old, by);
                    if (!ReferenceEquals(item, list.Items[i]))
                        return List(list, [.. list.Items.Take(i), item, .. list.Items.Skip(i + 1)]);
                }

                break;
            case MappingNode mapping:
                for (var i = 0; i < mapping.Entries.Count; i++)
                {
                    var (key, value) = mapping.Entries[i];
                    var entry = new Entry((TextNode)With(key, old, by), With(value, old, by));
                    if (!ReferenceEquals(entry.Key, key) || !ReferenceEquals(entry.Value, value))
                        return Mapping(mapping, [.. mapping.Entries.Take(i), entry, .. mapping.Entries.Skip(i + 1)]);
                }

                break;
        }

        return root;
    }

    /// <summary>A list like another with other items.</summary>
    public static ListNode List(ListNode like, IReadOnlyList<SyntaxNode> items) => new(like.File, like.Line, like.Column, items.ToSequence(), like.Weight);

    /// <summary>A mapping like another with other entries.</summary>
    public static MappingNode Mapping(SyntaxNode like, IReadOnlyList<Entry> entries) => new(like.File, like.Line, like.Column, entries.ToSequence(), like.Weight);

    /// <summary>A text at the place of another node.</summary>
    public static TextNode Text(SyntaxNode at, string text) => new(at.File, at.Line, at.Column, text, TextStyle.Plain);

    /// <summary>True if two trees say the same: the same keys, items and texts in the same order, wherever they stand.</summary>
    public static bool Same(SyntaxNode one, SyntaxNode other) => (one, other) switch
    {
        (TextNode left, TextNode right) => left.Text == right.Text && left.IsMissing == right.IsMissing,
        (ListNode left, ListNode right) => left.Items.Count == right.Items.Count && left.Items.Zip(right.Items).All(pair => Same(pair.First, pair.Second)),
        (MappingNode left, MappingNode right) => left.Entries.Count == right.Entries.Count
            && left.Entries.Zip(right.Entries).All(pair => pair.First.Key.Text == pair.Second.Key.Text && Same(pair.First.Value, pair.Second.Value)),
        _ => false,
    };
}
