using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Reads <c>thinners</c>: what thinners are made of, and the paint they curdle.</summary>
internal static class ThinnerBinder
{
    private static readonly Key[] Keys =
    [
        new("like", "the thinner it is like", Needed: false, "lacquer thinner"),
        new("carrier", $"what it is made of: {Choice.Of<Carrier>.Expected}", Needed: false, "alcohol"),
        new("curdles", "the kinds of paint it curdles, by their carrier", Needed: false, "[spirit]"),
    ];

    public static readonly TableForm Form = new(
        new("thinners", "what thinners are made of, where their names do not say", Needed: false, "{ blue cap: { like: lacquer thinner } }"),
        "By name. One that is `like` another shares what is not given.",
        Keys,
        Bind,
        _ => SchemaParts.Named(SchemaParts.Object("A thinner", Keys, key => key switch
        {
            "like" => SchemaParts.Ref("text"),
            "carrier" => SchemaParts.Choice(Choice.Of<Carrier>.Words),
            _ => SchemaParts.OneOrMore(SchemaParts.Choice(Choice.Of<Carrier>.Words)),
        })));

    private static void Bind(Desk desk, Shelf shelf, SyntaxNode node, GivenOnce given)
    {
        if (desk.Mapping(node, "thinners by name, such as { blue cap: { like: lacquer thinner } }") is not { } thinners)
            return;
        var before = shelf.Tables;
        var rows = new List<Thinner>();
        foreach (var (key, value) in thinners.Entries)
        {
            if (desk.NewName(key, "a thinner") is { } name
                && desk.Mapping(value, "what it is made of, such as { like: lacquer thinner }") is { } mapping
                && given.Note(key, value, $"The thinner ‘{name}’", WordText.Folded(name))
                && Row(desk, before, key, name, mapping) is { } row)
                rows.Add(row);
        }

        shelf.Add(with => with with { Thinners = with.Thinners.Concat(rows).ToSequence() });
    }

    private static Thinner? Row(Desk desk, Tables before, TextNode at, string name, MappingNode mapping)
    {
        var like = before.Thinner(name);
        if (mapping["like"] is { } node)
        {
            if (desk.Text(node, "the name of a thinner") is not { } from)
                return null;
            like = before.Thinner(from);
            if (like is null)
            {
                desk.UnknownName(node, from, "thinner", before.Rows.Thinners.Select(row => row.Name));
                return null;
            }
        }

        var (carrier, curdles) = (like?.Carrier, like?.Curdles ?? []);
        foreach (var (key, value) in mapping.Entries)
        {
            if (key.Text == "carrier")
                carrier = desk.Said(value, Choice.Of<Carrier>.Read, Choice.Of<Carrier>.Expected) ?? carrier;
            else if (key.Text == "curdles")
                curdles = desk.OneOrMore(value, $"one or more of {Choice.Of<Carrier>.Expected}").Select(item => desk.Said(item, Choice.Of<Carrier>.Read, Choice.Of<Carrier>.Expected)).OfType<Carrier>().ToSequence();
            else if (key.Text != "like")
                desk.UnknownKey(key, "a thinner", Keys.Select(each => each.Name));
        }

        if (carrier is { } made)
            return new Thinner { Name = name, Carrier = made, Curdles = curdles, Source = Tables.TheFile };
        desk.MissingKey(mapping, $"‘{name}’", "carrier", $"one of {Choice.Of<Carrier>.Expected}", at);
        return null;
    }
}
