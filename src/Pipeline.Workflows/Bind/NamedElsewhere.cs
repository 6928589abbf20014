namespace Pipeline.Workflows;

/// <summary>Steps of any model by their ‘as’ names: for messages alone, since a route only reaches its own.</summary>
internal sealed class NamedElsewhere
{
    private readonly Dictionary<string, (string Model, TextNode Name)> first = new(StringComparer.Ordinal);

    /// <param name="kits">What the files hold under <c>kits</c>, whether it can be bound or not.</param>
    public NamedElsewhere(IEnumerable<SyntaxNode> kits)
    {
        foreach (var model in kits.SelectMany(Mappings).Select(kit => kit["models"]).SelectMany(Mappings))
        {
            foreach (var step in Mappings(model["route"]))
            {
                if (model["model"] is TextNode name && step["as"] is TextNode called)
                    first.TryAdd(Desk.Plain(called.Text), (Desk.Plain(name.Text), called));
            }
        }
    }

    /// <summary>The first step of that name, with its model; null if no route says the name.</summary>
    public (string Model, TextNode Name)? Find(string name) => first.TryGetValue(name, out var found) ? found : null;

    private static IEnumerable<MappingNode> Mappings(SyntaxNode? node) => node is ListNode list ? list.Items.OfType<MappingNode>() : [];
}
