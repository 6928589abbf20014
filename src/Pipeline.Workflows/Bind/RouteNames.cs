using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Areas as they were named, and as they are.</summary>
/// <param name="Names">The names, placeholders already replaced; parts keep their own name.</param>
/// <param name="Areas">The areas in the model's order, without repeats.</param>
internal sealed record NamedAreas(Sequence<string> Names, Sequence<Area> Areas)
{
    private string? joined;

    /// <summary>The areas' own names.</summary>
    public Sequence<string> AreaNames { get; } = Areas.Count == 1 ? [Areas[0].Name] : Areas.Select(area => area.Name).ToSequence();

    /// <summary>They, parted by <c>+</c>.</summary>
    public string Joined => joined ??= string.Join('+', AreaNames);
}

/// <summary>A step by its name in the file.</summary>
/// <param name="As">Its name in the whole route.</param>
/// <param name="Index">Its index; -1 if it could not be bound.</param>
internal readonly record struct NamedStep(string As, int Index);

/// <summary>Names in a model's route, or in a scheme while the route follows it.</summary>
internal sealed class RouteNames : StepNames
{
    private readonly RouteBinder route;
    private readonly RouteNames? around;
    private readonly Dictionary<string, NamedAreas> areas;
    private readonly Dictionary<string, Paint> paints;
    private readonly Dictionary<string, NamedStep> steps = new(StringComparer.Ordinal);
    private readonly HashSet<string> stepNames;

    /// <param name="route">The route.</param>
    /// <param name="items">The entries whose names these are.</param>
    /// <param name="around">The names around the scheme; null for the route itself.</param>
    /// <param name="scheme">The scheme followed; null for the route itself.</param>
    /// <param name="followedFrom">The step of the route itself from which it is followed.</param>
    /// <param name="areas">What its placeholders for areas stand for.</param>
    /// <param name="paints">What its placeholders for paints stand for.</param>
    public RouteNames(
        RouteBinder route, List<RouteItem> items, RouteNames? around, SchemeForm? scheme, Place? followedFrom,
        Dictionary<string, NamedAreas> areas, Dictionary<string, Paint> paints)
        : base(route.Desk, route.Shelf)
    {
        (this.route, this.around, Scheme, FollowedFrom, this.areas, this.paints) = (route, around, scheme, followedFrom, areas, paints);
        stepNames = [.. items.Select(item => item.As).OfType<string>()];
    }

    public SchemeForm? Scheme { get; }

    public Place? FollowedFrom { get; }

    /// <summary>Names of steps that can be meant here.</summary>
    public IEnumerable<string> StepNames => around is null ? stepNames.Concat(route.LastByName.Keys).Distinct() : stepNames.Concat(around.StepNames).Distinct();

    public void Add(string name, NamedStep step)
    {
        steps[name] = step;
        route.LastByName[name] = step;
    }

    /// <summary>The step meant by a name: one of this scheme's, then one of what is around it, then the last of any scheme before.</summary>
    public NamedStep? Step(string name)
    {
        for (var names = this; names is not null; names = names.around)
        {
            if (names.steps.TryGetValue(name, out var step))
                return step;
        }

        return route.LastByName.TryGetValue(name, out var last) ? last : null;
    }

    /// <summary>True if a step further down has the name.</summary>
    public bool IsFurtherDown(string name) => stepNames.Contains(name) || (around?.IsFurtherDown(name) ?? false);

    public override AreaNames? Areas(SyntaxNode node) =>
        Named(node) is { } named ? new AreaNames(named.AreaNames) : null;

    /// <summary>The areas a node names, with the names as given.</summary>
    public NamedAreas? Named(SyntaxNode node)
    {
        if (node is TextNode)
            return One(node);
        var items = Desk.OneOrMore(node, "an area, a list of areas, or all");
        if (items.Count == 1)
            return One(items[0]);
        var isIn = new bool[route.Model.Areas.Count];
        var names = new List<string>(items.Count);
        var isWhole = items.Count > 0;
        foreach (var item in items)
        {
            if (One(item) is not { } named)
            {
                isWhole = false;
                continue;
            }

            names.AddRange(named.Names);
            foreach (var area in named.Areas)
                isIn[route.IndexOf(area.Name)] = true;
        }

        return isWhole ? new NamedAreas(names.ToSequence(), route.Model.Areas.Where((_, index) => isIn[index]).ToSequence()) : null;
    }

    private NamedAreas? One(SyntaxNode node)
    {
        if (Desk.Text(node, "an area, a list of areas, or all") is not { } name)
            return null;
        if (name == "all")
            return route.All;
        if (Scheme is not null)
            return areas.GetValueOrDefault(name);
        if (route.AreaOrPart(name) is { } named)
            return named;
        Desk.UnknownName(node, name, $"area of ‘{route.Model.Name}’", route.AreaAndPartNames.Append("all"));
        return null;
    }

    /// <summary>The parts a node names, with all their areas.</summary>
    public NamedAreas? Parts(SyntaxNode node)
    {
        if (Named(node) is not { } named)
            return null;
        var parts = new List<string>();
        foreach (var name in named.Names)
        {
            if (name == "all")
                parts.AddRange(route.Model.Parts);
            else if (route.Model.Parts.Contains(name))
                parts.Add(name);
            else
            {
                Desk.Error(node, $"‘{name}’ is an area of ‘{route.Model.Name}’, not a part.", $"Name parts: {string.Join(", ", route.Model.Parts)}.");
                return null;
            }
        }

        var distinct = parts.Distinct().ToSequence();
        return new NamedAreas(distinct, route.Model.Areas.Where(area => distinct.Contains(area.Part)).ToSequence());
    }

    /// <summary>
    /// The masks a node names, by their <c>as</c> names or by areas they lie on. A mask or area that is known but not masked here
    /// keeps its name, so that the rules can say what is wrong.
    /// </summary>
    public NamedAreas? Masks(SyntaxNode node)
    {
        var names = new List<string>();
        var isIn = new bool[route.Model.Areas.Count];
        var isWhole = true;
        foreach (var item in Desk.OneOrMore(node, "a mask, a list of masks, or all"))
        {
            if (Desk.Text(item, "a mask by its ‘as’ name, or an area it lies on") is not { } name || MasksCalled(item, name) is not { } masks)
            {
                isWhole = false;
                continue;
            }

            foreach (var mask in masks.Where(mask => !names.Contains(mask)))
            {
                names.Add(mask);
                foreach (var area in route.Masks.AreasOf(mask) ?? AreasCalled(mask))
                    isIn[route.IndexOf(area.Name)] = true;
            }
        }

        return isWhole ? new NamedAreas(names.ToSequence(), route.Model.Areas.Where((_, index) => isIn[index]).ToSequence()) : null;
    }

    private Sequence<Area> AreasCalled(string name) => AreasOrPlaceholder(name)?.Areas ?? [];

    private NamedAreas? AreasOrPlaceholder(string name) => name == "all" ? route.All : Scheme is null ? route.AreaOrPart(name) : areas.GetValueOrDefault(name);

    private Sequence<string>? MasksCalled(SyntaxNode node, string name)
    {
        if (name == "all")
            return route.Masks.On;
        if (Step(name) is { } step)
        {
            if (step.Index < 0 || route.Masks.AreasOf(step.As) is not null)
                return [step.As];
            if (AreasOrPlaceholder(name) is null)
            {
                Desk.Error(node, $"The step ‘{name}’ puts no mask on.", "Name the step that does, or an area the mask lies on.");
                return null;
            }
        }

        if (route.Masks.AreasOf(name) is not null && route.Masks.IsOn(name))
            return [name];
        if (AreasOrPlaceholder(name) is { } here)
        {
            var on = route.Masks.On.Where(mask => route.Masks.AreasOf(mask)!.Value.Any(area => here.Areas.Contains(area))).ToSequence();
            return on.IsEmpty ? [name] : on;
        }

        if (route.Masks.AreasOf(name) is not null || IsFurtherDown(name) || route.IsIncomplete)
            return [name];
        Desk.UnknownName(node, name, "mask", StepNames.Concat(route.AreaAndPartNames).Distinct());
        return null;
    }

    public override MaskName? Mask(SyntaxNode node)
    {
        if (Desk.Text(node, "a mask by its ‘as’ name, or an area it lies on") is not { } name || MasksCalled(node, name) is not { } masks)
            return null;
        return new MaskName(masks.IsEmpty ? name : masks[^1]);
    }

    public override Paint? Paint(SyntaxNode node)
    {
        if (Desk.Text(node, "the name of a paint or mix") is not { } name)
            return null;
        return paints.GetValueOrDefault(name) ?? PaintOfFile(node, name);
    }

    public override string? Text(SyntaxNode node) =>
        Desk.Text(node, "a text") is { } text ? paints.GetValueOrDefault(text)?.Name ?? text : null;

    /// <summary>The indexes of the steps that an entry comes after by name; all stand further up.</summary>
    public IEnumerable<int> Earlier(RouteItem item)
    {
        foreach (var node in item.After)
        {
            if (Desk.Text(node, "the ‘as’ name of a step") is not { } name)
                continue;
            if (Step(name) is { } step)
            {
                if (step.Index >= 0)
                    yield return step.Index;
            }
            else if (name == item.As)
            {
                Desk.Error(node, $"The step ‘{name}’ cannot come after itself.", "Name a step above it, or take ‘after’ out.");
            }
            else if (IsFurtherDown(name))
            {
                Desk.Error(node, $"The step ‘{name}’ stands further down; a step can only come after one above it.", "Move one of the two.");
            }
            else if (!route.IsIncomplete && route.Elsewhere.Find(name) is { } elsewhere)
            {
                Desk.Error(
                    node,
                    $"The step ‘{name}’ is one of {elsewhere.Model}; ‘after’ reaches only steps of the same model.",
                    "Take it out: hands, tools and places are shared between models anyway. Where one has to wait for another, write ‘at: ’ and a date and time.",
                    new Related(elsewhere.Name.Place, "the step of that name"));
            }
            else if (!route.IsIncomplete)
            {
                Desk.UnknownName(node, name, "step", StepNames, "No step of this route has a name; give it one with ‘as: ’.");
            }
        }
    }
}
