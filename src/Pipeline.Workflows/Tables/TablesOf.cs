using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>The tables of a trade where no file says otherwise.</summary>
public static class TablesOf
{
    /// <summary>All rows the plugins brought.</summary>
    public static Tables Trade(Trade trade)
    {
        ArgumentNullException.ThrowIfNull(trade);
        return new Shelf(trade).Tables;
    }
}
