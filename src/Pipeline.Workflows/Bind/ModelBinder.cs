using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Reads a model but for its route.</summary>
internal sealed class ModelBinder(Desk desk, Shelf shelf)
{
    private const int MostUnits = 9_999;
    private const int MostAreas = 500;
    private const string SizeExpected = "a size such as 30 cm², or one of tiny, small, medium, large, huge, terrain";

    /// <summary>Keys of a model.</summary>
    public static readonly Key[] Keys =
    [
        new("model", "its name, unlike any other of the batch", Needed: true, "Heavy diver"),
        new("count", "how many identical units, from 1 to 9,999", Needed: false, "4", "1"),
        new("material", "what it is made of", Needed: true, "resin"),
        new("handled", "whether it is picked up again and again in play, as a token is", Needed: false, "yes", "yes for play, else no"),
        new("for", "what it is wanted for when it is due: display, once it can be handled; packing or play, once it has cured", Needed: false, "play", "the kit's"),
        new("storage", "where it comes from, if that is colder than the bench", Needed: false, "{ at: 8 °C }"),
        new("areas", "its areas, each with its size or a size class; either these or parts", Needed: false, "{ suit: 30 cm², helmet: small }"),
        new("parts", "sub-assemblies painted apart, each with its areas", Needed: false, "{ body: { areas: { suit: 30 cm² } } }"),
        new("route", "its steps in order", Needed: true, "- undercoat: all"),
        new("due", "when it should be finished", Needed: false, "2026-12-12 18:00", "the kit's"),
        new("weight", "how much a late minute of it counts against others", Needed: false, "2", "1"),
        new("allow", "rules silenced for it, each with the reason", Needed: false, "{ matt-over-metal: old brass is meant to be dull }"),
    ];

    /// <summary>Keys of an area that says more than its size.</summary>
    public static readonly Key[] AreaKeys =
    [
        new("size", "its size, or a size class", Needed: true, "2 cm²"),
        new("shines", "whether it is meant to shine when it is finished", Needed: false, "yes", "as its coats let guess"),
    ];

    /// <summary>Keys of a part.</summary>
    public static readonly Key[] PartKeys =
    [
        new("material", "what it is made of, where it differs from the model", Needed: false, "cast metal", "the model's"),
        new("areas", "its areas, each with its size or a size class", Needed: true, "{ hook arm: 3 cm² }"),
    ];

    /// <summary>Stands in for a material that is missing or unknown, so that mistakes in the route are told in the same go.</summary>
    private static readonly Material Unnamed = new() { Name = "", Source = "" };

    private readonly Dictionary<string, TextNode> models = new(StringComparer.Ordinal);

    /// <summary>The model, also beside mistakes; null if it has no areas, since no route can then be read against it.</summary>
    public Model? Bind(MappingNode mapping, string kit)
    {
        string? name = null;
        var count = 1;
        Material? material = null;
        var isHandled = false;
        Storage? storage = null;
        var shape = new Shape();
        foreach (var (key, value) in mapping.Entries)
        {
            switch (key.Text)
            {
                case "model":
                    name = Name(value);
                    break;
                case "count":
                    count = desk.Said(value, text => NumberText.Whole(text, 1, MostUnits), "how many units, from 1 to 9,999") ?? 1;
                    break;
                case "material":
                    material = MaterialNamed(value);
                    break;
                case "handled":
                    isHandled = desk.YesOrNo(value);
                    break;
                case "storage":
                    storage = StorageBinder.Bind(desk, value);
                    break;
                case "areas" or "parts" or "route" or "due" or "for" or "weight" or "allow":
                    break;
                default:
                    desk.UnknownKey(key, "a model", Keys.Select(known => known.Name));
                    break;
            }
        }

        if (mapping["model"] is null)
            desk.MissingKey(mapping, "The model", "model", "its name");
        ReadShape(mapping, name ?? "", shape);
        material ??= Material(mapping, name ?? "", shape);
        if (shape.Areas.Count == 0)
            return null;
        return new Model
        {
            Name = name ?? "",
            Kit = kit,
            Place = (mapping["model"] ?? mapping).Place,
            Count = count,
            Material = material ?? Unnamed,
            IsHandled = isHandled,
            Storage = storage,
            Areas = shape.Areas.ToSequence(),
            Parts = shape.Parts.ToSequence(),
            PartMaterials = shape.Materials.Exists(part => part is not null) ? shape.Materials.ToSequence() : [],
        };
    }

    private string? Name(SyntaxNode node)
    {
        if (desk.NewName(node, "the model") is not { } name)
            return null;
        if (!models.TryAdd(name, (TextNode)node))
            desk.Error(node, $"Two models are called ‘{name}’.", "Give one of them another name, or raise the count of one.", new Related(models[name].Place, "the other"));
        return name;
    }

    private Material? MaterialNamed(SyntaxNode node)
    {
        if (desk.Text(node, "what it is made of") is not { } name)
            return null;
        if (shelf.Material(name) is { } material)
            return material;
        desk.UnknownName(node, name, "material", shelf.MaterialNames, "No plugin brought any material.");
        return null;
    }

    /// <summary>The material of a model that names none: that of its first part, if every part names its own.</summary>
    private Material? Material(MappingNode mapping, string name, Shape shape)
    {
        if (mapping["material"] is not null)
            return null;
        if (shape.Materials.Count > 0 && shape.Materials.TrueForAll(material => material is not null))
            return shape.Materials[0];
        desk.MissingKey(mapping, name.Length == 0 ? "The model" : $"The model ‘{name}’", "material", "what it is made of, such as resin");
        return null;
    }

    private void ReadShape(MappingNode mapping, string name, Shape shape)
    {
        var (areas, parts) = (mapping["areas"], mapping["parts"]);
        if (areas is not null && parts is not null)
            desk.Error(parts, "The model has both areas and parts.", "Give every area to a part, or leave the parts out.");
        if (areas is null && parts is null)
            desk.MissingKey(mapping, name.Length == 0 ? "The model" : $"The model ‘{name}’", "areas", "its areas with their sizes, such as { suit: 30 cm² }");
        if (areas is not null)
        {
            shape.Parts.Add(name);
            ReadAreas(areas, name, shape);
        }
        else if (parts is not null)
        {
            ReadParts(parts, shape);
        }
    }

    private void ReadParts(SyntaxNode node, Shape shape)
    {
        if (desk.Mapping(node, "parts by name, each with its areas") is not { } parts)
            return;
        if (parts.Entries.Count == 0)
            desk.Error(node, "There are no parts here.", "Write parts by name, each with its areas, or areas alone.");
        foreach (var (key, value) in parts.Entries)
        {
            if (desk.NewName(key, "a part") is not { } part || desk.Mapping(value, "its areas, such as { areas: { hook arm: 3 cm² } }") is not { } mapping)
                continue;
            Material? material = null;
            foreach (var (what, of) in mapping.Entries)
            {
                if (what.Text == "material")
                    material = MaterialNamed(of);
                else if (what.Text != "areas")
                    desk.UnknownKey(what, "a part", PartKeys.Select(known => known.Name));
            }

            shape.Parts.Add(part);
            shape.Materials.Add(material);
            if (mapping["areas"] is { } areas)
                ReadAreas(areas, part, shape);
            else
                desk.MissingKey(mapping, $"The part ‘{part}’", "areas", "its areas with their sizes", key);
        }
    }

    private void ReadAreas(SyntaxNode node, string part, Shape shape)
    {
        if (desk.Mapping(node, "areas with their sizes, such as { suit: 30 cm², helmet: small }") is not { } areas)
            return;
        if (areas.Entries.Count == 0)
            desk.Error(node, "There are no areas here.", "Write areas with their sizes, such as { suit: 30 cm², helmet: small }.");
        foreach (var (key, value) in areas.Entries)
        {
            var (sizeNode, shines) = value is MappingNode more ? ReadArea(more) : (value, null);
            var size = default(SurfaceSize);
            var hasSize = sizeNode is not null && desk.Says(sizeNode, AmountText.SizeOrClass, SizeExpected, out size);
            if (hasSize && size.SquareCentimetres == 0)
                desk.Error(sizeNode!, "An area of no size has nothing to paint.", $"Write {SizeExpected}.");
            if (desk.NewName(key, "an area") is not { } name)
                continue;
            if (shape.Areas.Count == MostAreas)
            {
                desk.Error(key, $"The model has more than {MostAreas} areas.", "Name larger areas, or part the model.");
                return;
            }

            if (shape.Places.TryAdd(name, key))
                shape.Areas.Add(new Area(name, part, hasSize ? size : new SurfaceSize(1)) { Shines = shines });
            else
                desk.Error(key, $"Two areas of the model are called ‘{name}’.", "Give one of them another name.", new Related(shape.Places[name].Place, "the other"));
        }
    }

    /// <summary>What an area says of itself where it says more than its size; the size is a finding if it is missing.</summary>
    private (SyntaxNode? Size, bool? Shines) ReadArea(MappingNode mapping)
    {
        bool? shines = null;
        foreach (var (key, value) in mapping.Entries)
        {
            if (key.Text == "shines")
                shines = desk.YesOrNo(value);
            else if (key.Text != "size")
                desk.UnknownKey(key, "an area", AreaKeys.Select(known => known.Name));
        }

        if (mapping["size"] is null)
            desk.MissingKey(mapping, "The area", "size", SizeExpected);
        return (mapping["size"], shines);
    }

    private sealed class Shape
    {
        public List<Area> Areas { get; } = [];

        public List<string> Parts { get; } = [];

        public List<Material?> Materials { get; } = [];

        public Dictionary<string, TextNode> Places { get; } = new(StringComparer.Ordinal);
    }
}
