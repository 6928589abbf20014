using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Reads <c>mask-materials</c>: other figures for a mask material of the trade, or a material of one's own.</summary>
internal static class MaskMaterialBinder
{
    private const string Unlimited = "any";

    private static readonly Key[] Keys =
    [
        new("like", "the mask material a new one takes its figures from", Needed: false, "low-tack tape"),
        new("needs", "the drying state it asks of the paint under it", Needed: false, "mask-safe"),
        new("strong", "whether it sticks hard enough to lift weak skins", Needed: false, "no"),
        new("time-on", $"how long it may stay on, or {Unlimited}", Needed: false, "24 h"),
        new("hard-limit", "the time on beyond which it is an error", Needed: false, "48 h"),
        new("sets", "how long it must dry before paint, where it is a liquid", Needed: false, "20-40 min"),
    ];

    public static readonly TableForm Form = new(
        new("mask-materials", "other figures for mask materials, or materials of one's own", Needed: false, "{ low-tack tape: { time-on: 12 h } }"),
        "By name. A mask material of the trade keeps every figure that is not given; a new one begins with `like`.",
        Keys,
        Bind,
        _ => SchemaParts.Named(SchemaParts.Object("Figures of a mask material", Keys, key => key switch
        {
            "like" => SchemaParts.Ref("mask material"),
            "needs" => SchemaParts.Choice(Choice.Of<DryingState>.Words),
            "strong" => SchemaParts.Ref("yes or no"),
            "time-on" => SchemaParts.Pattern(Patterns.DurationOr(Unlimited)),
            "hard-limit" => SchemaParts.Pattern(Patterns.Duration),
            _ => SchemaParts.Pattern(Patterns.DurationRange),
        })));

    private static void Bind(Desk desk, Shelf shelf, SyntaxNode node, GivenOnce given)
    {
        if (desk.Mapping(node, "mask materials by name, each with the figures to change") is not { } materials)
            return;
        foreach (var (key, value) in materials.Entries)
        {
            if (desk.NewName(key, "a mask material") is not { } name || desk.Mapping(value, "the figures to change, such as { time-on: 12 h }") is not { } mapping)
                continue;
            var known = shelf.MaskMaterial(name);
            if (!given.Note(key, value, $"The mask material ‘{name}’", known?.Name ?? WordText.Folded(name)))
                continue;
            if (known is not null && mapping["like"] is { } like)
                desk.Error(like, $"‘{name}’ is a mask material of the trade already.", "Leave ‘like’ out to change its figures, or give the new material another name.");
            else if ((known ?? Like(desk, shelf, key, name, mapping)) is { } material)
                shelf.Add(WithFigures(desk, material, mapping));
        }
    }

    private static MaskMaterial? Like(Desk desk, Shelf shelf, TextNode key, string name, MappingNode mapping)
    {
        if (mapping["like"] is not { } like)
        {
            desk.UnknownName(key, name, "mask material", shelf.MaskMaterialNames);
            return null;
        }

        if (desk.Text(like, "the name of a mask material") is not { } from)
            return null;
        if (shelf.MaskMaterial(from) is { } model)
            return model with { Name = name, AlsoCalled = [] };
        desk.UnknownName(like, from, "mask material", shelf.MaskMaterialNames);
        return null;
    }

    private static MaskMaterial WithFigures(Desk desk, MaskMaterial material, MappingNode mapping)
    {
        foreach (var (key, value) in mapping.Entries)
            material = WithFigure(desk, material, key, value);
        if (material.HardLimit is { } hard && material.TimeOn is { } time && hard < time)
            desk.Error(mapping, $"The hard limit of {hard} comes before the time on of {time}.", "Give a ‘hard-limit’ that is no shorter than ‘time-on’.");
        return material with { Source = Tables.TheFile };
    }

    private static MaskMaterial WithFigure(Desk desk, MaskMaterial material, TextNode key, SyntaxNode value)
    {
        switch (key.Text)
        {
            case "like":
                return material;
            case "needs":
                return material with { Needs = desk.Said(value, Choice.Of<DryingState>.Read, Choice.Of<DryingState>.Expected) ?? material.Needs };
            case "strong":
                return material with { IsStrongTack = desk.YesOrNo(value) };
            case "time-on" when value is TextNode { Text: Unlimited }:
                return material with { TimeOn = null, HardLimit = null };
            case "time-on":
                return material with { TimeOn = desk.Said(value, DurationText.Drying, $"{DurationText.Expected}, or {Unlimited}") ?? material.TimeOn };
            case "hard-limit":
                return material with { HardLimit = desk.Said(value, DurationText.Drying, DurationText.Expected) ?? material.HardLimit };
            case "sets":
                return material with { Sets = desk.Said(value, DurationText.Range, DurationText.RangeExpected) ?? material.Sets };
            default:
                desk.UnknownKey(key, "a mask material", Keys.Select(known => known.Name));
                return material;
        }
    }
}
