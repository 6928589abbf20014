using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Reads <c>paints</c>.</summary>
internal static class PaintBinder
{
    /// <summary>Keys of a paint.</summary>
    public static readonly Key[] Keys =
    [
        new("family", "its coating chemistry", Needed: true, "acrylic lacquer"),
        new("sheen", "how it shines when dry: matt, satin, gloss or mirror", Needed: false, "gloss", "matt; satin for metal"),
        new("colour", "sRGB in quotes, since ‘#’ begins a comment", Needed: false, "\"#0c0d10\""),
        new("clear", "whether it is a transparent colour or a varnish", Needed: false, "yes", "no"),
        new("metallic", "whether it carries metal flakes", Needed: false, "yes", "no"),
        new("stock", "what is left of it", Needed: false, "40 mL"),
        new("drying", "times from its label, by drying state", Needed: false, "{ recoatable: 30 min, mask-safe: 12-24 h }", "the family's"),
        new("pot-life", "how long it stays usable in the cup", Needed: false, "45 min", "the family's"),
        new("storage", "where it is kept, if that is colder than the bench", Needed: false, "{ at: 8 °C, in-the-room-for: 2 h }"),
        new("note", "a remark", Needed: false, "shake well"),
    ];

    /// <summary>Binds the paints of one file.</summary>
    public static void Bind(Desk desk, Shelf shelf, SyntaxNode node, GivenOnce given)
    {
        if (desk.Mapping(node, "paints by name, each with its family") is not { } paints)
            return;
        foreach (var (key, value) in paints.Entries)
        {
            if (desk.NewName(key, "a paint") is not { } name || !IsNew(given, name, key, value))
                continue;
            if (desk.Mapping(value, "the family at least, such as { family: waterborne acrylic }") is { } mapping && BindOne(desk, shelf, key, name, mapping) is { } paint)
                shelf.Add(paint);
            else
                shelf.AddBroken(name);
        }
    }

    /// <summary>Notes where a paint or mix is given; false if it is known already.</summary>
    public static bool IsNew(GivenOnce given, string name, TextNode key, SyntaxNode value) => given.Note(key, value, $"The paint or mix ‘{name}’", name);

    private static Paint? BindOne(Desk desk, Shelf shelf, TextNode key, string name, MappingNode mapping)
    {
        var label = new Label();
        foreach (var (figure, value) in mapping.Entries)
        {
            if (figure.Text == "family")
                label.Family = FamilyNamed(desk, shelf, value);
            else if (figure.Text == "stock")
                label.Stock = desk.Said(value, AmountText.Volume, AmountText.VolumeExpected);
            else if (!label.Take(desk, figure, value))
                desk.UnknownKey(figure, "a paint", Keys.Select(known => known.Name));
        }

        if (label.Family is not { } family)
        {
            if (mapping["family"] is null)
                desk.MissingKey(mapping, $"The paint ‘{name}’", "family", "its chemistry, such as waterborne acrylic", key);
            return null;
        }

        return new Paint
        {
            Name = name,
            Place = key.Place,
            Family = family,
            // metal that says nothing of its sheen shines
            Sheen = label.Sheen ?? (label.IsMetallic == true ? Sheen.Satin : Sheen.Matt),
            IsClear = label.IsClear ?? false,
            IsMetallic = label.IsMetallic ?? false,
            Colour = label.Colour,
            Stock = label.Stock,
            Thin = family.Thin.With(label.Drying),
            Heavy = family.Heavy.With(label.Drying),
            Effect = (family.Effect ?? family.Thin).With(label.Drying),
            HasLabelTimes = label.Drying.Count > 0 || shelf.HasOwnTimes(family),
            PotLife = label.PotLife ?? family.PotLife,
            Storage = label.Storage,
            Note = label.Note,
        };
    }

    /// <summary>The family a node names, or null and a finding.</summary>
    public static Family? FamilyNamed(Desk desk, Shelf shelf, SyntaxNode node)
    {
        if (desk.Text(node, "the name of a family") is not { } name)
            return null;
        if (shelf.Family(name) is { } family)
            return family;
        desk.UnknownName(node, name, "family", shelf.FamilyNames, "No plugin brought any family.");
        return null;
    }

    /// <summary>What paints and mixes can both say of themselves.</summary>
    internal sealed class Label
    {
        public Family? Family { get; set; }

        public Volume? Stock { get; set; }

        public Sheen? Sheen { get; private set; }

        public string? Colour { get; private set; }

        public bool? IsClear { get; private set; }

        public bool? IsMetallic { get; private set; }

        public List<LabelTime> Drying { get; private set; } = [];

        public Drying? PotLife { get; private set; }

        public Storage? Storage { get; private set; }

        public string? Note { get; private set; }

        /// <summary>False if the key is none of these.</summary>
        public bool Take(Desk desk, TextNode key, SyntaxNode value)
        {
            switch (key.Text)
            {
                case "sheen":
                    Sheen = desk.Said(value, Choice.Of<Sheen>.Read, Choice.Of<Sheen>.Expected);
                    return true;
                case "colour":
                    Colour = desk.Says(value, WordText.Colour, WordText.ColourExpected, out var colour) ? colour : null;
                    return true;
                case "clear":
                    IsClear = desk.YesOrNo(value);
                    return true;
                case "metallic":
                    IsMetallic = desk.YesOrNo(value);
                    return true;
                case "drying":
                    Drying = DryingBinder.Bind(desk, value);
                    return true;
                case "pot-life":
                    PotLife = desk.Said(value, DurationText.Drying, DurationText.Expected);
                    return true;
                case "storage":
                    Storage = StorageBinder.Bind(desk, value);
                    return true;
                case "note":
                    Note = desk.Text(value, "a remark");
                    return true;
                default:
                    return false;
            }
        }
    }
}
