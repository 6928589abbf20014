using System.Text.Json.Nodes;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Reads <c>setting</c>: how long glues, fillers and wet pieces take.</summary>
internal static class SettingBinder
{
    private static readonly Key[] Keys =
    [
        new("sets", "how long until it can be worked on", Needed: false, "2-4 h", "the trade's"),
        new("sandable", "how long until it can be sanded, where that is longer", Needed: false, "12-24 h", "the trade's"),
    ];

    public static readonly TableForm Form = new(
        new("setting", "how long glues, fillers and wet pieces take, where that is not what the trade says", Needed: false, "{ PVA: 1-2 h }"),
        "By name: a time alone, or these.",
        Keys,
        Bind,
        _ => SchemaParts.Named(new JsonObject
        {
            ["anyOf"] = new JsonArray(
                SchemaParts.Pattern(Patterns.DurationRange),
                SchemaParts.Object("How something sets", Keys, _ => SchemaParts.Pattern(Patterns.DurationRange))),
        }));

    private static void Bind(Desk desk, Shelf shelf, SyntaxNode node, GivenOnce given)
    {
        if (desk.Mapping(node, "what sets by name, such as { PVA: 1-2 h }") is not { } names)
            return;
        var known = shelf.Tables.Rows.Settings.DistinctBy(row => row.Name).ToList();
        var rows = new List<Setting>();
        foreach (var (key, value) in names.Entries)
        {
            if (desk.Text(key, "the name of a glue or filler") is not { } name)
                continue;
            if (known.Find(row => WordText.Folded(row.Name) == WordText.Folded(name)) is not { } row)
                desk.UnknownName(key, name, "glue or filler", known.Select(each => each.Name));
            else if (given.Note(key, value, $"‘{row.Name}’", row.Name))
                rows.Add(WithTimes(desk, shelf.Tables.Setting(row.Name), value) with { Source = Tables.TheFile });
        }

        shelf.Add(with => with with { Settings = with.Settings.Concat(rows).ToSequence() });
    }

    private static Setting WithTimes(Desk desk, Setting row, SyntaxNode value)
    {
        if (value is not MappingNode mapping)
            return row with { Sets = desk.Said(value, DurationText.Range, DurationText.RangeExpected) ?? row.Sets };
        foreach (var (key, time) in mapping.Entries)
        {
            if (key.Text == "sets")
                row = row with { Sets = desk.Said(time, DurationText.Range, DurationText.RangeExpected) ?? row.Sets };
            else if (key.Text == "sandable")
                row = row with { Sandable = desk.Said(time, DurationText.Range, DurationText.RangeExpected) ?? row.Sandable };
            else
                desk.UnknownKey(key, "a setting time", Keys.Select(each => each.Name));
        }

        return row;
    }
}
