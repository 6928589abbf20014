using Pipeline.Abstractions;

namespace Pipeline.Reports;

/// <summary>A table of the trade as people read it: every cell in the words of a workflow file.</summary>
/// <param name="Name">The key of a workflow file that says it otherwise.</param>
/// <param name="Says">One sentence: what it tells.</param>
/// <param name="Heads">What its columns are, the last of them the source.</param>
/// <param name="Rows">Its rows; of rows about the same thing only the one that counts.</param>
public sealed record TradeTable(string Name, string Says, Sequence<string> Heads, Sequence<Sequence<string>> Rows)
{
    /// <summary>The head of the column for a row's other names.</summary>
    internal const string AlsoCalled = "also called";

    /// <summary>The column whose cells are put together for reading where rows are else the same; null for none.</summary>
    internal int? Joined { get; init; }

    /// <summary>Rows that begin with the same cell belong together, and beginnings that all else is the same of are put together, too.</summary>
    internal bool IsInBlocks { get; init; }

    /// <summary>More columns than stand side by side on a page; the rows are then told one after the other.</summary>
    internal bool IsWide => Heads.Contains(AlsoCalled);

    /// <summary>The rows for reading.</summary>
    internal Sequence<Sequence<string>> Shortened()
    {
        var rows = Joined is { } column ? Together(Rows, column) : Rows;
        if (!IsInBlocks)
            return rows;
        var blocks = rows.GroupBy(row => row[0]).Select(block => (Begins: block.Key, Goes: block.Select(row => row.Skip(1).ToSequence()).ToSequence()));
        return blocks
            .GroupBy(block => block.Goes)
            .SelectMany(alike => alike.Key.Select(cells => (Sequence<string>)[Listed(alike.Select(block => block.Begins)), .. cells]))
            .ToSequence();
    }

    private static Sequence<Sequence<string>> Together(Sequence<Sequence<string>> rows, int column) => rows
        .GroupBy(row => row.Where((_, index) => index != column).ToSequence())
        .Select(group => group.First().Select((cell, index) => index == column ? Listed(group.Select(row => row[column])) : cell).ToSequence())
        .ToSequence();

    private static string Listed(IEnumerable<string> words) => string.Join(", ", words);
}
