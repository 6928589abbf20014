using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Reads <c>allow</c>: rules silenced, each with a reason.</summary>
internal static class SilenceBinder
{
    public static Sequence<Silence> Bind(Desk desk, Shelf shelf, SyntaxNode node)
    {
        var silences = new List<Silence>();
        if (desk.Mapping(node, "rules with the reason for each, such as { mask-on-too-long: tried on a card }") is not { } mapping)
            return [];
        foreach (var (key, value) in mapping.Entries)
        {
            if (!shelf.Rules.Contains(key.Text))
                desk.UnknownName(key, key.Text, "rule", shelf.Rules, "No plugin brought any rule.");
            if (desk.Text(value, "the reason, in your own words") is { } reason)
                silences.Add(new Silence(key.Text, reason, key.Place));
        }

        return silences.ToSequence();
    }
}
