using System.Globalization;
using Pipeline.Abstractions;
using Pipeline.Surfaces;

namespace Pipeline.Reports;

/// <summary>Surfaces before and after a step, from the ground up; areas that fare alike stand together.</summary>
internal static class SurfaceText
{
    public static void Set(Page page, StepLook look)
    {
        if (look.Touched.IsEmpty)
            return;
        page.Blank();
        page.Line(new Run("Surfaces", Tone.Heading), new Run("  (+ after the step, - before it only)", Tone.Quiet));
        foreach (var alike in look.Touched.GroupBy(area => (look.Moment.Before[area], look.Moment.After[area], IsReached: look.Moment.Overspray.Contains(area))))
            SetAreas(page, [.. alike], alike.Key.Item1, alike.Key.Item2, alike.Key.IsReached);
    }

    private static void SetAreas(Page page, IReadOnlyList<string> areas, Surface before, Surface after, bool isReached)
    {
        var note = before.IsHidden ? " (hidden by a join)" : isReached ? " (overspray reaches)" : "";
        page.Hung("  ", Visible.Line(WhyText.Listed(areas) + note), Tone.Strong);
        SetChange(page, "prepared", Done(before), Done(after));
        SetChange(page, "masks", Masks(before), Masks(after));
        SetChange(page, "shows", before.Sheen.ToString().ToLowerInvariant(), after.Sheen.ToString().ToLowerInvariant());
        var rows = Rows(before, after).ToList();
        if (rows.Count == 0)
            page.Line($"    bare {Visible.Line(after.Material.Name)}");
        else
            Columns.Set(page, 4, [new(""), new("", FromRight: true), new("layer"), new("family"), new("sheen"), new("for"), new("laid")], rows);
    }

    private static void SetChange(Page page, string what, string before, string after) =>
        page.Hung(new Run($"    {what}: ", Tone.Quiet), Visible.Line(before == after ? after : $"{before} -> {after}"));

    private static string Done(Surface surface) => surface.Preparations.IsEmpty
        ? "nothing"
        : string.Join(", ", surface.Preparations.Select(done => Spelling.Parted(done.What.ToString(), '-')).Distinct());

    private static string Masks(Surface surface) => surface.Masks.IsEmpty
        ? "none"
        : string.Join(", ", surface.Masks.Select(mask =>
            $"{mask.Name} ({mask.Material.Name}{(mask.Layers.IsEmpty ? "" : $", with {WhyText.Listed([.. mask.Layers.Select(layer => layer.Name)])} on it")})"));

    private static IEnumerable<IReadOnlyList<Run>> Rows(Surface before, Surface after)
    {
        var common = 0;
        while (common < before.Layers.Count && common < after.Layers.Count && before.Layers[common].Equals(after.Layers[common]))
            common++;
        for (var i = 0; i < before.Layers.Count; i++)
            yield return Row(i < common ? "" : "-", i + 1, before.Layers[i]);
        for (var i = common; i < after.Layers.Count; i++)
            yield return Row("+", i + 1, after.Layers[i]);
    }

    private static Run[] Row(string mark, int number, Layer layer) =>
    [
        mark,
        number.ToString(CultureInfo.InvariantCulture),
        Visible.Line(layer.Name),
        Visible.Line(layer.Family?.Name ?? ""),
        layer.Sheen.ToString().ToLowerInvariant(),
        Role(layer),
        How(layer),
    ];

    private static string Role(Layer layer) => layer.Technique is Technique.Plain ? Spaced(layer.Role.ToString()) : Spaced(layer.Technique.ToString());

    private static string How(Layer layer)
    {
        var how = $"{Spaced(layer.Method.ToString())}, {layer.Body.ToString().ToLowerInvariant()}";
        return layer.Coats == 1 ? how : string.Create(CultureInfo.InvariantCulture, $"{how}, {layer.Coats} coats");
    }

    private static string Spaced(string word) => Spelling.Parted(word, ' ');
}
