using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>
/// Sees to it that nothing is given twice under whichever of its names; but files that are planned together may give the same thing alike, so that
/// each can also be planned by itself.
/// </summary>
internal sealed class GivenOnce(Desk desk)
{
    private readonly Dictionary<string, Entry> given = new(StringComparer.Ordinal);

    /// <summary>True the first time; else nothing if another file says the very same, or a finding with both places.</summary>
    /// <param name="key">Where it is given.</param>
    /// <param name="value">What is said of it.</param>
    /// <param name="what">It with its name, as a sentence begins: <c>The paint ‘bone’</c>.</param>
    /// <param name="name">Its name, or the one it is known by.</param>
    public bool Note(TextNode key, SyntaxNode value, string what, string name)
    {
        if (given.TryAdd(name, new Entry(key, value)))
            return true;
        var first = given[name];
        if (first.Key.File == key.File)
            desk.Error(key, $"{what} is given twice.", "Keep one of the two.", new Related(first.Key.Place, "first given here"));
        else if (!AreAlike(first.Value, value))
            desk.Error(key, $"{what} is given twice, and not alike.", "Give it in one file only, or alike in all.", new Related(first.Key.Place, "first given here"));
        return false;
    }

    // Texts as they are written, the keys of a mapping in any order.
    private static bool AreAlike(SyntaxNode one, SyntaxNode other) => (one, other) switch
    {
        (TextNode left, TextNode right) => Desk.Plain(left.Text) == Desk.Plain(right.Text),
        (ListNode left, ListNode right) => left.Items.Count == right.Items.Count && left.Items.Zip(right.Items).All(pair => AreAlike(pair.First, pair.Second)),
        (MappingNode left, MappingNode right) => left.Entries.Count == right.Entries.Count
            && left.Entries.All(entry => right[entry.Key.Text] is { } same && AreAlike(entry.Value, same)),
        _ => false,
    };
}
