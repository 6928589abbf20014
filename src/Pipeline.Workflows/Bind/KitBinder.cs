using System.Globalization;
using NodaTime;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Reads <c>kits</c>: kits, their models, and the route of each.</summary>
internal sealed class KitBinder(Desk desk, Shelf shelf, Schemes schemes, StepReader steps, NamedElsewhere elsewhere, DateTimeZone? zone)
{
    /// <summary>Keys of a kit.</summary>
    public static readonly Key[] KitKeys =
    [
        new("kit", "its name", Needed: true, "Salvage divers"),
        new("due", "when its models should be finished", Needed: false, "2026-12-12 18:00", "the batch's"),
        new("for", "what its models are wanted for by then: display, packing or play", Needed: false, "packing", "display"),
        new("models", "its models", Needed: true, "- model: Heavy diver"),
    ];

    private readonly Workload workload = new();
    private readonly Dictionary<string, TextNode> kits = new(StringComparer.Ordinal);
    private readonly ModelBinder models = new(desk, shelf);

    /// <summary>The kits of one file.</summary>
    public List<Kit> Bind(SyntaxNode node, Due? fileDue)
    {
        var bound = new List<Kit>();
        foreach (var item in desk.OneOrMore(node, "kits, each beginning with ‘- kit: ’ and its name"))
        {
            if (desk.Mapping(item, "‘kit: ’ with its name, and ‘models: ’") is { } mapping && BindKit(mapping, fileDue) is { } kit)
                bound.Add(kit);
        }

        return bound;
    }

    /// <summary>A date and time by which something should be finished.</summary>
    public static Due? DueAt(Desk desk, SyntaxNode node, DateTimeZone? zone)
    {
        if (desk.Said(node, CalendarText.DateTime, CalendarText.DateTimeExpected) is not { } by)
            return null;
        if (zone is not null && zone.MapLocal(by).Count == 0)
            desk.Error(node, SittingBinder.SkippedHour(zone, by), "Write a time before or after that hour.");
        return new Due(by, node.Place);
    }

    private Kit? BindKit(MappingNode mapping, Due? due)
    {
        string? name = null;
        var purpose = Purpose.Display;
        SyntaxNode? modelsNode = null;
        foreach (var (key, value) in mapping.Entries)
        {
            switch (key.Text)
            {
                case "kit":
                    name = desk.NewName(value, "the kit");
                    break;
                case "due":
                    due = DueAt(desk, value, zone);
                    break;
                case "for":
                    purpose = PurposeOf(value);
                    break;
                case "models":
                    modelsNode = value;
                    break;
                default:
                    desk.UnknownKey(key, "a kit", KitKeys.Select(known => known.Name));
                    break;
            }
        }

        if (mapping["kit"] is null)
            desk.MissingKey(mapping, "The kit", "kit", "its name");
        else if (name is not null && mapping["kit"] is TextNode node && !kits.TryAdd(name, node))
            desk.Error(node, $"Two kits are called ‘{name}’.", "Give one of them another name.", new Related(kits[name].Place, "the other"));
        if (modelsNode is null)
        {
            desk.MissingKey(mapping, "The kit", "models", "at least one, beginning with ‘- model: ’");
            return null;
        }

        var routes = new List<Route>();
        foreach (var item in desk.OneOrMore(modelsNode, "models, each beginning with ‘- model: ’ and its name"))
        {
            if (desk.Mapping(item, "‘model: ’ with its name, and its areas, material and route") is { } model && BindModel(model, name ?? "", due, purpose) is { } route)
                routes.Add(route);
        }

        return name is null ? null : new Kit(name, mapping["kit"]!.Place, routes.ToSequence());
    }

    private Route? BindModel(MappingNode mapping, string kit, Due? due, Purpose purpose)
    {
        var model = models.Bind(mapping, kit);
        var weight = 1.0;
        Sequence<Silence> silences = [];
        List<RouteItem> items = [];
        foreach (var (key, value) in mapping.Entries)
        {
            switch (key.Text)
            {
                case "route":
                    items = steps.Read(value);
                    break;
                case "due":
                    due = DueAt(desk, value, zone);
                    break;
                case "for":
                    purpose = PurposeOf(value);
                    break;
                case "weight":
                    weight = Weight(value);
                    break;
                case "allow":
                    silences = SilenceBinder.Bind(desk, shelf, value);
                    break;
            }
        }

        if (mapping["route"] is null)
            desk.MissingKey(mapping, "The model", "route", "its steps, each beginning with ‘- ’ and a verb");
        if (model is null)
            return null;
        model = model with { Purpose = purpose, IsHandled = mapping["handled"] is null ? purpose == Purpose.Play : model.IsHandled };
        var binder = new RouteBinder(desk, shelf, schemes, workload, elsewhere, model);
        binder.Bind(items);
        CountUnitSteps(mapping, model, binder.Steps.Count);
        return new Route
        {
            Model = model,
            Steps = binder.Steps,
            Pins = binder.Pins,
            Paces = binder.Paces,
            Due = due,
            DueWeight = weight,
            Silences = silences,
        };
    }

    private Purpose PurposeOf(SyntaxNode node) => desk.Said(node, Choice.Of<Purpose>.Read, Choice.Of<Purpose>.Expected) ?? Purpose.Display;

    private double Weight(SyntaxNode node)
    {
        if (!desk.Says(node, text => NumberText.Number(text, 1_000), "a weight such as 2, above 0 and up to 1,000", out var weight))
            return 1;
        if (weight == 0)
            desk.Error(node, "A weight of 0 would make its due time mean nothing.", "Write a weight such as 2, or leave ‘due’ out.");
        return weight;
    }

    private void CountUnitSteps(MappingNode mapping, Model model, int steps)
    {
        var isWithin = workload.UnitSteps <= Workload.MostUnitSteps;
        workload.UnitSteps += (long)steps * model.Count;
        if (isWithin && workload.UnitSteps > Workload.MostUnitSteps)
        {
            desk.Error(
                mapping["count"] ?? mapping,
                string.Create(CultureInfo.InvariantCulture, $"With these {model.Count:N0} units of {steps:N0} steps the batch has more than {Workload.MostUnitSteps:N0} steps to do, unit by unit."),
                "Plan fewer units together.");
        }
    }
}
