using System.Globalization;
using Pipeline.Abstractions;
using Spectre.Console;

namespace Pipeline.Reports;

/// <summary>Tables of the trade for a terminal: rows that say the same are put together, sources stand below.</summary>
public static class TablesText
{
    /// <summary>A table as text.</summary>
    public static string Render(TradeTable table, TextStyle style) => Set(table, style).ToString();

    /// <summary>Puts a table on a console, as it suits it.</summary>
    public static void Write(TradeTable table, IAnsiConsole console) => Set(table, TextStyle.For(console)).WriteTo(console);

    private static Page Set(TradeTable table, TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(style);
        var page = new Page(style);
        page.Hung(new Run(table.Name + ": ", Tone.Heading), table.Says);
        page.Blank();
        var rows = table.Shortened();
        var sources = rows.Select(row => row[^1]).Distinct().ToList();
        if (table.IsInBlocks)
            SetInBlocks(page, table, rows, sources);
        else if (table.IsWide)
            SetAsList(page, table.Heads, rows, sources);
        else
            Columns.Set(page, 0, [.. table.Heads.SkipLast(1).Select(head => new Column(head)), new Column("")], [.. rows.Select(row => Cells(row, sources))]);
        page.Blank();
        for (var i = 0; i < sources.Count; i++)
            page.Hung(new Run(Mark(i) + " ", Tone.Quiet), Visible.Line(sources[i]), Tone.Quiet);
        return page;
    }

    private static void SetInBlocks(Page page, TradeTable table, Sequence<Sequence<string>> rows, List<string> sources)
    {
        foreach (var block in rows.GroupBy(row => row[0]))
        {
            page.Hung("", Visible.Line(block.Key), Tone.Strong);
            Columns.Set(page, 2, [.. table.Heads.Skip(1).SkipLast(1).Select(head => new Column(head)), new Column("")], [.. block.Select(row => Cells(row, sources).Skip(1).ToList())]);
            page.Blank();
        }
    }

    private static void SetAsList(Page page, Sequence<string> heads, Sequence<Sequence<string>> rows, List<string> sources)
    {
        foreach (var row in rows)
        {
            var says = Enumerable.Range(1, heads.Count - 2).Where(i => row[i].Length > 0).Select(i => row[i] == "yes" ? heads[i] : $"{heads[i]} {row[i]}");
            page.Line(new Run(Visible.Line(row[0]), Tone.Strong), new Run(" " + Mark(sources.IndexOf(row[^1])), Tone.Quiet));
            page.Hung("  ", Visible.Line(string.Join("; ", says)));
        }
    }

    private static IReadOnlyList<Run> Cells(Sequence<string> row, List<string> sources) =>
        [.. row.Take(row.Count - 1).Select((cell, i) => new Run(Visible.Line(cell), i == 0 ? Tone.Strong : Tone.Plain)), new Run(Mark(sources.IndexOf(row[^1])), Tone.Quiet)];

    private static string Mark(int source) => string.Create(CultureInfo.InvariantCulture, $"[{source + 1}]");
}
