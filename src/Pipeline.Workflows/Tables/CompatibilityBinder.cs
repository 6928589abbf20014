using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Reads <c>compatibility</c>: how a new coat of a family may go over a coat of another.</summary>
internal static class CompatibilityBinder
{
    /// <summary>What follows a family's name where a row speaks of its thin effects.</summary>
    public const string Effect = " effect";

    private static readonly Key[] Keys =
    [
        new("dry", $"how it may go on a coat that is dry but has not cured: {Choice.Of<Bearing>.Expected}", Needed: false, "mist", "the trade's"),
        new("from", "the drying state the coat under it must have reached for that", Needed: false, "mask-safe", "the trade's, or recoatable"),
        new("cured", "how it may go on a coat that has cured", Needed: false, "fine", "the trade's"),
        new("note", "a remark", Needed: false, "tried on a card"),
    ];

    public static readonly TableForm Form = new(
        new("compatibility", "how a new coat may go over an existing one, where that is not what the trade says", Needed: false, "{ acrylic lacquer: { enamel: { cured: fine } } }"),
        $"By the family of the new coat, then by that of the coat under it. A family's name with `{Effect.Trim()}` after it, such as `enamel effect`, stands for its washes, filters and streaks.",
        Keys,
        Bind,
        _ => SchemaParts.Named(SchemaParts.Named(SchemaParts.Object("One coat over another", Keys, key => key switch
        {
            "from" => SchemaParts.Choice(Choice.Of<DryingState>.Words),
            "note" => SchemaParts.Ref("text"),
            _ => SchemaParts.Choice(Choice.Of<Bearing>.Words),
        }))));

    private static void Bind(Desk desk, Shelf shelf, SyntaxNode node, GivenOnce given)
    {
        if (desk.Mapping(node, "families of new coats, such as { acrylic lacquer: { enamel: { cured: fine } } }") is not { } coats)
            return;
        var before = shelf.Tables;
        var rows = new List<CoatOver>();
        foreach (var (coatKey, value) in coats.Entries)
        {
            if (CoatOf(desk, shelf, coatKey) is not var (coat, asEffect) || desk.Mapping(value, "families of coats under it, such as { enamel: { cured: fine } }") is not { } unders)
                continue;
            foreach (var (underKey, cell) in unders.Entries)
            {
                if (FamilyOf(desk, shelf, underKey) is not { } under || desk.Mapping(cell, "how it may go, such as { dry: never, cured: mist }") is not { } mapping)
                    continue;
                var words = $"{coat.Name}{(asEffect ? Effect : "")} over {under.Name}";
                if (given.Note(underKey, cell, $"‘{words}’", words) && Row(desk, underKey, words, before.Over(coat, asEffect, under), mapping) is { } row)
                    rows.Add(row with { Coat = coat.Name, AsEffect = asEffect, Over = under.Name });
            }
        }

        shelf.Add(with => with with { Compatibility = with.Compatibility.Concat(rows).ToSequence() });
    }

    private static CoatOver? Row(Desk desk, TextNode at, string words, CoatOver? known, MappingNode mapping)
    {
        var (dry, cured, from, note) = (known?.WhenDry, known?.WhenCured, known?.From ?? DryingState.Recoatable, known?.Note ?? "");
        foreach (var (key, value) in mapping.Entries)
        {
            switch (key.Text)
            {
                case "dry":
                    dry = desk.Said(value, Choice.Of<Bearing>.Read, Choice.Of<Bearing>.Expected) ?? dry;
                    break;
                case "from":
                    from = desk.Said(value, Choice.Of<DryingState>.Read, Choice.Of<DryingState>.Expected) ?? from;
                    break;
                case "cured":
                    cured = desk.Said(value, Choice.Of<Bearing>.Read, Choice.Of<Bearing>.Expected) ?? cured;
                    break;
                case "note":
                    note = desk.Text(value, "a remark") ?? note;
                    break;
                default:
                    desk.UnknownKey(key, "one coat over another", Keys.Select(each => each.Name));
                    break;
            }
        }

        if (dry is { } whenDry && cured is { } whenCured)
            return new CoatOver { Coat = "", Over = "", WhenDry = whenDry, From = from, WhenCured = whenCured, Note = note, Source = Tables.TheFile };
        desk.MissingKey(mapping, $"‘{words}’", dry is null ? "dry" : "cured", $"one of {Choice.Of<Bearing>.Expected}", at);
        return null;
    }

    private static (Family Family, bool AsEffect)? CoatOf(Desk desk, Shelf shelf, TextNode key)
    {
        if (desk.Text(key, "the name of a family") is not { } name)
            return null;
        var asEffect = shelf.Family(name) is null && name.EndsWith(Effect, StringComparison.OrdinalIgnoreCase);
        if (asEffect && shelf.Family(name[..^Effect.Length]) is { } effect)
            return (effect, true);
        if (shelf.Family(name) is { } family)
            return (family, false);
        desk.UnknownName(key, name, "family", shelf.FamilyNames.Concat(shelf.FamilyNames.Select(known => known + Effect)));
        return null;
    }

    /// <summary>The family a key names, or null and a finding.</summary>
    public static Family? FamilyOf(Desk desk, Shelf shelf, TextNode key)
    {
        if (desk.Text(key, "the name of a family") is not { } name)
            return null;
        if (shelf.Family(name) is { } family)
            return family;
        desk.UnknownName(key, name, "family", shelf.FamilyNames);
        return null;
    }
}
