using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Reads <c>materials</c>: other facts about what pieces are made of, or a material of one's own.</summary>
internal static class MaterialBinder
{
    private const string Any = "any";

    private static readonly Key[] Keys =
    [
        new("like", "the material a new one takes its facts from", Needed: false, "resin"),
        new("porous", "whether it drinks paint until it is sealed", Needed: false, "no"),
        new("wash-first", "whether it must be washed before paint", Needed: false, "yes"),
        new("post-cure", "whether it must be cured in ultraviolet light before paint", Needed: false, "no"),
        new("bare-colour", $"how grave colour without an undercoat is: warning, error, or {Any} where it does not matter", Needed: false, "warning"),
        new("softens-in-solvent", "whether it melts under hot solvents when bare", Needed: false, "yes"),
        new("dissolves", "whether it dissolves under them", Needed: false, "no"),
        new("warps-above", $"the warmest air it bears, or {Any}", Needed: false, "45 °C"),
        new("harmful-dust", "whether its dust harms when it is worked dry", Needed: false, "yes"),
    ];

    public static readonly TableForm Form = new(
        new("materials", "other facts about what pieces are made of, or materials of one's own", Needed: false, "{ tough resin: { like: printed resin, warps-above: 60 °C } }"),
        "By name. A material of the trade keeps every fact that is not given; a new one begins with `like`.",
        Keys,
        Bind,
        _ => SchemaParts.Named(SchemaParts.Object("Facts about a material", Keys, key => key switch
        {
            "like" => SchemaParts.Ref("material"),
            "bare-colour" => SchemaParts.Words(["warning", "error", Any]),
            "warps-above" => SchemaParts.Pattern(Patterns.TemperatureOr(Any)),
            _ => SchemaParts.Ref("yes or no"),
        })));

    private static void Bind(Desk desk, Shelf shelf, SyntaxNode node, GivenOnce given)
    {
        if (desk.Mapping(node, "materials by name, each with the facts to change") is not { } materials)
            return;
        foreach (var (key, value) in materials.Entries)
        {
            if (desk.NewName(key, "a material") is not { } name || desk.Mapping(value, "the facts to change, such as { porous: no }") is not { } mapping)
                continue;
            var known = shelf.Material(name);
            if (!given.Note(key, value, $"The material ‘{name}’", known?.Name ?? WordText.Folded(name)))
                continue;
            if (known is not null && mapping["like"] is { } like)
                desk.Error(like, $"‘{name}’ is a material of the trade already.", "Leave ‘like’ out to change its facts, or give the new material another name.");
            else if ((known ?? Like(desk, shelf, key, name, mapping)) is { } material)
                shelf.Add(WithFacts(desk, material, mapping) with { Source = Tables.TheFile });
        }
    }

    private static Material? Like(Desk desk, Shelf shelf, TextNode key, string name, MappingNode mapping)
    {
        if (mapping["like"] is not { } like)
        {
            desk.UnknownName(key, name, "material", shelf.MaterialNames);
            return null;
        }

        if (desk.Text(like, "the name of a material") is not { } from)
            return null;
        if (shelf.Material(from) is { } model)
            return model with { Name = name, AlsoCalled = [] };
        desk.UnknownName(like, from, "material", shelf.MaterialNames);
        return null;
    }

    private static Material WithFacts(Desk desk, Material material, MappingNode mapping)
    {
        foreach (var (key, value) in mapping.Entries)
        {
            material = key.Text switch
            {
                "like" => material,
                "porous" => material with { IsPorous = desk.YesOrNo(value) },
                "wash-first" => material with { NeedsWashing = desk.YesOrNo(value) },
                "post-cure" => material with { NeedsPostCure = desk.YesOrNo(value) },
                "bare-colour" => material with { BareColour = value is TextNode { Text: Any } ? null : desk.Said(value, Choice.Of<Level>.Read, $"warning, error or {Any}") },
                "softens-in-solvent" => material with { SoftensInSolvent = desk.YesOrNo(value) },
                "dissolves" => material with { DissolvesInSolvent = desk.YesOrNo(value) },
                "warps-above" => material with
                {
                    WarpsAbove = value is TextNode { Text: Any } ? null : desk.Said(value, AmountText.Temperature, $"{AmountText.TemperatureExpected}, or {Any}"),
                },
                "harmful-dust" => material with { HarmfulDust = desk.YesOrNo(value) },
                _ => Unknown(desk, key, material),
            };
        }

        return material;
    }

    private static Material Unknown(Desk desk, TextNode key, Material material)
    {
        desk.UnknownKey(key, "a material", Keys.Select(known => known.Name));
        return material;
    }
}
