using System.Text.Json.Nodes;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Reads <c>figures</c>: numbers that rules go by.</summary>
internal static class FigureBinder
{
    public static readonly TableForm Form = new(
        new("figures", "numbers that rules go by, where they are not the trade's", Needed: false, "{ warming up: 3 h }"),
        "By name; `pipeline tables figures` lists them with what they mean.",
        [],
        Bind,
        Schema);

    private static void Bind(Desk desk, Shelf shelf, SyntaxNode node, GivenOnce given)
    {
        if (desk.Mapping(node, "figures by name, such as { warming up: 3 h }") is not { } names)
            return;
        var known = shelf.Tables.Rows.Figures.DistinctBy(row => row.Name).ToList();
        var rows = new List<Figure>();
        foreach (var (key, value) in names.Entries)
        {
            if (desk.Text(key, "the name of a figure") is not { } name)
                continue;
            if (known.Find(row => WordText.Folded(row.Name) == WordText.Folded(name)) is not { } row)
                desk.UnknownName(key, name, "figure", known.Select(each => each.Name));
            else if (given.Note(key, value, $"‘{row.Name}’", row.Name) && desk.Says(value, text => Read(text, row.Unit), Expected(row), out var amount))
                rows.Add(row with { Value = amount, Source = Tables.TheFile });
        }

        shelf.Add(with => with with { Figures = with.Figures.Concat(rows).ToSequence() });
    }

    private static Written<double> Read(string text, FigureUnit unit) => unit switch
    {
        FigureUnit.Minutes => DurationText.Minutes(text),
        FigureUnit.Degrees => NumberText.Amount(text, "a difference of temperature", 100, each => each == "°C" ? 1 : null),
        FigureUnit.Percent => NumberText.Amount(text, "a share", 100, each => each == "%" ? 1 : null),
        _ => NumberText.Number(text, 1000),
    };

    private static string Expected(Figure row) => row.Unit switch
    {
        FigureUnit.Minutes => DurationText.Expected,
        FigureUnit.Degrees => $"degrees such as {row.Spoken}",
        FigureUnit.Percent => $"a share such as {row.Spoken}",
        _ => $"a number such as {row.Spoken}",
    };

    private static JsonNode Schema(Shelf shelf) => SchemaParts.Named(new JsonObject
    {
        ["anyOf"] = new JsonArray(SchemaParts.Number(0, 1000), SchemaParts.Pattern(Patterns.Duration), SchemaParts.Pattern(Patterns.Temperature), SchemaParts.Pattern(Patterns.Share)),
    });
}
