using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Reads <c>clean-outs</c>: attended minutes to clean a spraying tool out.</summary>
internal static class CleanOutBinder
{
    private const string Expected = "minutes such as 5 min, or a range such as 4-6 min";

    private static readonly (string Key, ToolChange Change)[] Changes =
        [.. Enum.GetValues<ToolChange>().Select(change => (WordText.Kebab(change.ToString()), change))];

    private static readonly Key[] Keys =
    [
        new("get-ready", "to get the clean tool out and ready, once before its first load of a sitting", Needed: false, "5 min"),
        new("light-to-dark", "where a darker paint of the same kind follows", Needed: false, "1-3 min"),
        new("dark-to-light", "where a lighter paint of the same kind follows", Needed: false, "4-6 min"),
        new("family-change", "where a paint of another kind follows", Needed: false, "8-12 min"),
        new("after-metallic", "where something follows metal: stripped", Needed: false, "10-15 min"),
        new("end-of-sitting", "to put the tool away", Needed: false, "10-15 min"),
    ];

    public static readonly TableForm Form = new(
        new("clean-outs", "attended minutes to clean a spraying tool out, where they are not the trade's", Needed: false, "{ dark-to-light: 4 min }"),
        "Of a range, plans count with the middle.",
        Keys,
        Bind,
        _ => SchemaParts.Object("Minutes to clean a spraying tool out", Keys, _ => SchemaParts.Pattern(Patterns.DurationRange)));

    private static void Bind(Desk desk, Shelf shelf, SyntaxNode node, GivenOnce given)
    {
        if (desk.Mapping(node, "minutes, such as { dark-to-light: 4 min }") is not { } mapping)
            return;
        var rows = new List<CleanOutTime>();
        foreach (var (key, value) in mapping.Entries)
        {
            var known = Array.FindIndex(Changes, each => each.Key == key.Text);
            if (known < 0)
                desk.UnknownKey(key, "clean-outs", Keys.Select(each => each.Name));
            else if (given.Note(key, value, $"‘{key.Text}’", key.Text) && desk.Says(value, DurationText.Range, Expected, out var range))
                rows.Add(new CleanOutTime(Changes[known].Change, new Attended(range.Low.Minutes), new Attended(range.High.Minutes), Tables.TheFile));
        }

        shelf.Add(with => with with { CleanOuts = with.CleanOuts.Concat(rows).ToSequence() });
    }
}
