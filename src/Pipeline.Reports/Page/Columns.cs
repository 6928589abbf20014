namespace Pipeline.Reports;

/// <summary>A column of a table on the page.</summary>
/// <param name="Head">Its heading.</param>
/// <param name="FromRight">Whether its cells end at its right edge, as figures do.</param>
internal readonly record struct Column(string Head, bool FromRight = false);

/// <summary>Tables without a frame. A table that is too wide breaks the cells of its widest columns, never cuts them.</summary>
internal static class Columns
{
    private const int Gap = 2;
    private const int Narrowest = 10;

    /// <summary>Sets a table; a column in which every cell is empty is left out.</summary>
    public static void Set(Page page, int indent, IReadOnlyList<Column> columns, IReadOnlyList<IReadOnlyList<Run>> rows)
    {
        var used = Enumerable.Range(0, columns.Count).Where(i => rows.Any(row => row[i].Text.Length > 0)).ToList();
        var widths = Fitted(page.Style.Width - indent, [.. used.Select(i => rows.Max(row => Cells.Width(row[i].Text))).Zip(used, (w, i) => Math.Max(w, Cells.Width(columns[i].Head)))]);
        if (used.Any(i => columns[i].Head.Length > 0))
            SetRow(page, indent, [.. used.Select(i => columns[i])], widths, [.. used.Select(i => new Run(columns[i].Head, Tone.Quiet))]);
        foreach (var row in rows)
            SetRow(page, indent, [.. used.Select(i => columns[i])], widths, [.. used.Select(i => row[i])]);
    }

    private static int[] Fitted(int room, int[] widths)
    {
        while (widths.Sum() + Gap * (widths.Length - 1) > room && widths.Max() > Narrowest)
            widths[Array.IndexOf(widths, widths.Max())]--;
        return widths;
    }

    private static void SetRow(Page page, int indent, IReadOnlyList<Column> columns, int[] widths, IReadOnlyList<Run> cells)
    {
        var broken = cells.Select((cell, i) => Cells.Wrap(cell.Text, widths[i])).ToList();
        for (var line = 0; line < broken.Max(b => b.Count); line++)
        {
            var runs = new List<Run> { new(new string(' ', indent)) };
            for (var i = 0; i < cells.Count; i++)
            {
                var text = line < broken[i].Count ? broken[i][line] : "";
                text = columns[i].FromRight ? Cells.Right(text, widths[i]) : Cells.Left(text, widths[i]);
                runs.Add(new Run(i == cells.Count - 1 ? text : text + new string(' ', Gap), cells[i].Tone));
            }

            page.Line(runs);
        }
    }
}
