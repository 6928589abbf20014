using Pipeline.Abstractions;

namespace Pipeline.Reports;

/// <summary>Tables of the trade as JSON: every row by itself, cells as texts in the words of a workflow file, empty ones left out.</summary>
public static class TablesJson
{
    /// <summary>The tables as a document that ends in a line feed.</summary>
    public static string Render(Sequence<TradeTable> tables) => JsonText.Document(json => json.Objects("tables", tables, table =>
    {
        json.WriteString("name", table.Name);
        json.WriteString("says", table.Says);
        json.Objects("rows", table.Rows, row =>
        {
            for (var i = 0; i < row.Count; i++)
            {
                if (row[i].Length > 0)
                    json.WriteString(table.Heads[i].Replace(' ', '-'), row[i]);
            }
        });
    }));
}
