using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>A step as it stands in a file.</summary>
/// <param name="List">The route it is an entry of.</param>
/// <param name="Index">Which entry.</param>
/// <param name="Mapping">The entry.</param>
/// <param name="Verb">Its verb's key and value.</param>
/// <param name="IsInScheme">True if the route is a scheme's, so that names are placeholders.</param>
internal sealed record StepNode(ListNode List, int Index, MappingNode Mapping, Entry Verb, bool IsInScheme);

/// <summary>Finds steps and texts of a tree by their places. What a YAML alias repeats is not found: a change there would change more than one place.</summary>
internal sealed class RoutePlaces
{
    private readonly Dictionary<(int Line, int Column), StepNode> steps = [];
    private readonly Dictionary<(int Line, int Column), TextNode> texts = [];
    private readonly HashSet<SyntaxNode> seen = new(ReferenceEqualityComparer.Instance);
    private readonly HashSet<SyntaxNode> repeated = new(ReferenceEqualityComparer.Instance);

    public RoutePlaces(SyntaxNode root) => Visit(root, isInScheme: false, depth: 0);

    public StepNode? Step(Place place) => steps.GetValueOrDefault((place.Line, place.Column));

    public TextNode? Text(Place place) => texts.GetValueOrDefault((place.Line, place.Column));

    /// <summary>The steps, each once, in the order of their places.</summary>
    public IEnumerable<StepNode> Steps => steps.Values.DistinctBy(step => step.Mapping, ReferenceEqualityComparer.Instance).OrderBy(step => step.Mapping.Place);

    private void Visit(SyntaxNode node, bool isInScheme, int depth)
    {
        if (!seen.Add(node))
        {
            Forget(node);
            return;
        }

        switch (node)
        {
            case TextNode text:
                texts.TryAdd((text.Line, text.Column), text);
                break;
            case ListNode list:
                for (var i = 0; i < list.Items.Count; i++)
                {
                    if (list.Items[i] is MappingNode item)
                        Add(new StepNode(list, i, item, default, isInScheme));
                    Visit(list.Items[i], isInScheme, depth + 1);
                }

                break;
            case MappingNode mapping:
                foreach (var (key, value) in mapping.Entries)
                {
                    Visit(key, isInScheme, depth + 1);
                    Visit(value, isInScheme || (depth == 0 && key.Text == "schemes"), depth + 1);
                }

                break;
        }
    }

    // any key may be the verb: only the place that is asked for tells
    private void Add(StepNode step)
    {
        foreach (var entry in step.Mapping.Entries)
            steps.TryAdd((entry.Key.Line, entry.Key.Column), step with { Verb = entry });
    }

    private void Forget(SyntaxNode node)
    {
        if (!repeated.Add(node))
            return;
        switch (node)
        {
            case TextNode:
                texts.Remove((node.Line, node.Column));
                break;
            case ListNode list:
                foreach (var item in list.Items)
                    Forget(item);
                break;
            case MappingNode mapping:
                foreach (var (key, value) in mapping.Entries)
                {
                    steps.Remove((key.Line, key.Column));
                    Forget(key);
                    Forget(value);
                }

                break;
        }
    }
}
