using System.Globalization;
using System.Text;
using Pipeline.Abstractions;

namespace Pipeline.Reports;

/// <summary>Tables of the trade as a page of Markdown.</summary>
public static class TablesMarkdown
{
    /// <summary>The page, ending in a line feed.</summary>
    public static string Render(Sequence<TradeTable> tables)
    {
        var page = new StringBuilder();
        page.Append("# Tables of the trade\n\nGenerated from the program and its plugins; do not edit. `pipeline tables` prints them with your own plugins.\n\n");
        page.Append("A product's label and safety data sheet, written in the workflow file, come before every figure here. ");
        page.Append("[The workflow reference](workflow-reference.md) says how a file changes a row, [plugins](plugins.md) how a plugin adds one.\n");
        foreach (var table in tables)
        {
            page.Append(CultureInfo.InvariantCulture, $"\n## {table.Name}\n\n{table.Says}\n\n");
            Line(page, table.Heads);
            Line(page, table.Heads.Select(_ => "---"));
            foreach (var row in table.Shortened())
                Line(page, row);
        }

        return page.ToString();
    }

    private static void Line(StringBuilder page, IEnumerable<string> cells) =>
        page.Append("| ").AppendJoin(" | ", cells.Select(cell => cell.Replace("|", "\\|", StringComparison.Ordinal))).Append(" |\n");
}
