using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Reads <c>re-wetting</c>: what a liquid does to a coat it is rubbed on.</summary>
internal static class RewettingBinder
{
    private static readonly Key[] Keys =
    [
        new("dry", $"what it does to a coat that is dry but has not cured: {Choice.Of<Bite>.Expected}", Needed: false, "lifts", "the trade's"),
        new("cured", "what it does to a coat that has cured", Needed: false, "nothing", "the trade's"),
    ];

    public static readonly TableForm Form = new(
        new("re-wetting", "what liquids do to coats, where that is not what the trade says", Needed: false, "{ isopropyl: { enamel: { dry: lifts, cured: nothing } } }"),
        $"By the liquid ({Choice.Of<Liquid>.Expected}), then by the family of the coat.",
        Keys,
        Bind,
        _ => SchemaParts.Named(SchemaParts.Named(SchemaParts.Object("A liquid on a coat", Keys, _ => SchemaParts.Choice(Choice.Of<Bite>.Words)))));

    private static void Bind(Desk desk, Shelf shelf, SyntaxNode node, GivenOnce given)
    {
        if (desk.Mapping(node, "liquids, such as { isopropyl: { enamel: { cured: nothing } } }") is not { } liquids)
            return;
        var before = shelf.Tables;
        var rows = new List<Rewets>();
        foreach (var (liquidKey, value) in liquids.Entries)
        {
            if (LiquidOf(desk, liquidKey) is not { } liquid || desk.Mapping(value, "families, such as { enamel: { cured: nothing } }") is not { } coats)
                continue;
            foreach (var (coatKey, cell) in coats.Entries)
            {
                if (CompatibilityBinder.FamilyOf(desk, shelf, coatKey) is not { } family || desk.Mapping(cell, "what it does, such as { dry: lifts, cured: nothing }") is not { } mapping)
                    continue;
                var words = $"{liquid.Spoken()} on {family.Name}";
                if (given.Note(coatKey, cell, $"‘{words}’", words) && Row(desk, coatKey, words, before.Rewetting(liquid, family), mapping) is { } row)
                    rows.Add(row with { Liquid = liquid, Coat = family.Name });
            }
        }

        shelf.Add(with => with with { Rewetting = with.Rewetting.Concat(rows).ToSequence() });
    }

    private static Liquid? LiquidOf(Desk desk, TextNode key)
    {
        if (desk.Text(key, "the name of a liquid") is not { } name)
            return null;
        if (Choice.Of<Liquid>.Read(name) is { Wrong: null } read)
            return read.Value;
        desk.UnknownName(key, name, "liquid", Choice.Of<Liquid>.Words.Words);
        return null;
    }

    private static Rewets? Row(Desk desk, TextNode at, string words, Rewets? known, MappingNode mapping)
    {
        var (dry, cured) = (known?.WhenDry, known?.WhenCured);
        foreach (var (key, value) in mapping.Entries)
        {
            if (key.Text == "dry")
                dry = desk.Said(value, Choice.Of<Bite>.Read, Choice.Of<Bite>.Expected) ?? dry;
            else if (key.Text == "cured")
                cured = desk.Said(value, Choice.Of<Bite>.Read, Choice.Of<Bite>.Expected) ?? cured;
            else
                desk.UnknownKey(key, "a liquid on a coat", Keys.Select(each => each.Name));
        }

        if (dry is { } whenDry && cured is { } whenCured)
            return new Rewets { Liquid = default, Coat = "", WhenDry = whenDry, WhenCured = whenCured, Source = Tables.TheFile };
        desk.MissingKey(mapping, $"‘{words}’", dry is null ? "dry" : "cured", $"one of {Choice.Of<Bite>.Expected}", at);
        return null;
    }
}
