using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>A scheme as the file gives it.</summary>
internal sealed class SchemeForm(TextNode key)
{
    public TextNode Key => key;

    public string Name => key.Text;

    /// <summary>Placeholders for areas.</summary>
    public List<string> Areas { get; } = [];

    /// <summary>Placeholders for paints and mixes.</summary>
    public List<string> Paints { get; } = [];

    public List<RouteItem> Items { get; set; } = [];

    /// <summary>False if it has a mistake of its own; following it then tells nothing new.</summary>
    public bool IsSound { get; set; } = true;
}

/// <summary>Reads <c>schemes</c> and checks each by itself, whether it is followed or not.</summary>
internal sealed class Schemes(Desk desk, Shelf shelf)
{
    /// <summary>Keys of a scheme.</summary>
    public static readonly Key[] Keys =
    [
        new("areas", "placeholders for areas, filled in where the scheme is followed", Needed: false, "[metal, glass]", "none"),
        new("paints", "placeholders for paints and mixes", Needed: false, "[ground]", "none"),
        new("route", "its steps", Needed: true, "- undercoat: metal"),
    ];

    private readonly Dictionary<string, SchemeForm> byName = new(StringComparer.Ordinal);

    public SchemeForm? Named(string name) => byName.GetValueOrDefault(name);

    public IEnumerable<string> Names => byName.Keys;

    /// <summary>Reads the schemes of one file; <see cref="Check"/> comes once all files are read.</summary>
    public void Read(SyntaxNode node, StepReader steps)
    {
        if (desk.Mapping(node, "schemes by name, each with its route") is not { } schemes)
            return;
        foreach (var (key, value) in schemes.Entries)
        {
            if (desk.NewName(key, "a scheme") is not { } name)
                continue;
            if (byName.TryGetValue(name, out var first))
                desk.Error(key, $"The scheme ‘{name}’ is given twice.", "Keep one of the two, or give the other another name.", new Related(first.Key.Place, "first given here"));
            else
                byName.Add(name, ReadOne(key, value, steps));
        }
    }

    /// <summary>Checks every scheme's names, and that none follows itself.</summary>
    public void Check()
    {
        foreach (var scheme in byName.Values)
            CheckNames(scheme);
        FindRings();
    }

    private SchemeForm ReadOne(TextNode key, SyntaxNode value, StepReader steps)
    {
        var scheme = new SchemeForm(key);
        var before = desk.FindingCount;
        if (desk.Mapping(value, "its placeholders and its route") is { } mapping)
        {
            foreach (var (what, node) in mapping.Entries)
            {
                switch (what.Text)
                {
                    case "areas":
                        ReadPlaceholders(scheme, scheme.Areas, node);
                        break;
                    case "paints":
                        ReadPlaceholders(scheme, scheme.Paints, node);
                        break;
                    case "route":
                        scheme.Items = steps.Read(node);
                        break;
                    default:
                        desk.UnknownKey(what, "a scheme", Keys.Select(known => known.Name));
                        break;
                }
            }

            if (mapping["route"] is null)
                desk.MissingKey(mapping, $"The scheme ‘{key.Text}’", "route", "its steps", key);
        }

        scheme.IsSound = desk.FindingCount == before;
        return scheme;
    }

    private void ReadPlaceholders(SchemeForm scheme, List<string> placeholders, SyntaxNode node)
    {
        foreach (var item in desk.OneOrMore(node, "placeholders such as [metal, glass]"))
        {
            if (desk.NewName(item, "a placeholder") is not { } name)
                continue;
            if (name is StepReader.FollowKey or "after" or "allow")
                desk.Error(item, $"A step that follows a scheme has a key ‘{name}’ already.", "Give the placeholder another name.");
            else if (scheme.Areas.Contains(name) || scheme.Paints.Contains(name))
                desk.Error(item, $"The placeholder ‘{name}’ is given twice.", "Keep one of the two.");
            else
                placeholders.Add(name);
        }
    }

    private void CheckNames(SchemeForm scheme)
    {
        var before = desk.FindingCount;
        var names = new SchemeNames(desk, shelf, scheme);
        var steps = new Dictionary<string, TextNode>(StringComparer.Ordinal);
        foreach (var item in scheme.Items)
        {
            if (item is { As: { } name, AsNode: { } node } && !steps.TryAdd(name, node))
                desk.Error(node, $"Two steps are called ‘{name}’.", "Give one of them another name.", new Related(steps[name].Place, "the other"));
            if (item is RouteItem.Step step)
                names.Check(step);
            else if (item is RouteItem.Follow follow)
                Bindings(follow, names, names.BindArea);
        }

        scheme.IsSound &= desk.FindingCount == before;
    }

    /// <summary>The scheme a step follows, with what its placeholders stand for; null and findings if it cannot be followed.</summary>
    public (SchemeForm Scheme, Dictionary<string, TArea> Areas, Dictionary<string, Paint> Paints)? Bindings<TArea>(
        RouteItem.Follow follow, StepNames names, Func<SyntaxNode, TArea?> bindArea)
        where TArea : class
    {
        if (Named(follow.Scheme) is not { } scheme)
        {
            desk.UnknownName(follow.SchemeNode, follow.Scheme, "scheme", Names, "The file has no scheme; add it under ‘schemes’.");
            return null;
        }

        var (areas, paints) = (new Dictionary<string, TArea>(StringComparer.Ordinal), new Dictionary<string, Paint>(StringComparer.Ordinal));
        var isWhole = true;
        foreach (var (key, value) in follow.Bindings)
        {
            var name = Desk.Plain(key.Text);
            if (scheme.Areas.Contains(name))
                isWhole &= bindArea(value) is { } area && areas.TryAdd(name, area);
            else if (scheme.Paints.Contains(name))
                isWhole &= names.Paint(value) is { } paint && paints.TryAdd(name, paint);
            else
                Unexpected(scheme, key);
        }

        foreach (var placeholder in scheme.Areas.Concat(scheme.Paints))
        {
            if (follow.Bindings.Exists(binding => Desk.Plain(binding.Key.Text) == placeholder))
                continue;
            var what = scheme.Areas.Contains(placeholder) ? "the areas it stands for" : "the paint or mix it stands for";
            desk.MissingKey(follow.Mapping, $"The scheme ‘{scheme.Name}’ is followed, but here it", placeholder, what, follow.SchemeNode);
            isWhole = false;
        }

        return isWhole ? (scheme, areas, paints) : null;
    }

    private void Unexpected(SchemeForm scheme, TextNode key)
    {
        if (shelf.Verbs.Named(key.Text) is not null)
            desk.Error(key, $"This step follows a scheme and has the verb ‘{key.Text}’, too.", "Make two steps of it, each with its own ‘- ’.");
        else
            desk.UnknownKey(key, $"a step that follows ‘{scheme.Name}’", scheme.Areas.Concat(scheme.Paints).Concat(["after", "allow"]));
    }

    /// <summary>Finds schemes that follow each other in a ring, and marks every one on it. Keeps its own stack.</summary>
    private void FindRings()
    {
        var done = new HashSet<SchemeForm>();
        foreach (var start in byName.Values)
        {
            if (done.Contains(start))
                continue;
            var path = new List<(SchemeForm Scheme, int Next)> { (start, 0) };
            while (path.Count > 0)
            {
                var (scheme, next) = path[^1];
                if (next == scheme.Items.Count)
                {
                    done.Add(scheme);
                    path.RemoveAt(path.Count - 1);
                    continue;
                }

                path[^1] = (scheme, next + 1);
                if (scheme.Items[next] is not RouteItem.Follow follow || Named(follow.Scheme) is not { } followed || done.Contains(followed))
                    continue;
                var at = path.FindIndex(step => step.Scheme == followed);
                if (at < 0)
                    path.Add((followed, 0));
                else
                    Ring(follow, [.. path.Skip(at).Select(step => step.Scheme)]);
            }
        }
    }

    private void Ring(RouteItem.Follow follow, List<SchemeForm> ring)
    {
        var names = string.Join(" → ", ring.Append(ring[0]).Take(12).Select(scheme => $"‘{scheme.Name}’")) + (ring.Count >= 12 ? " → …" : "");
        desk.Error(follow.SchemeNode, ring.Count == 1 ? $"The scheme ‘{ring[0].Name}’ follows itself." : $"Schemes follow each other in a ring: {names}.", "Take one of these steps out.");
        foreach (var scheme in ring)
            scheme.IsSound = false;
    }
}
