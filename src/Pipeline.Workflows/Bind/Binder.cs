using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>What became of binding.</summary>
/// <param name="Batch">The batch; null if there is any mistake.</param>
/// <param name="Findings">All mistakes, in file order, and notes that do not stand in the way. None names a rule.</param>
public sealed record Binding(Batch? Batch, Sequence<Finding> Findings);

/// <summary>The second stage: names to things, particulars to records, schemes followed, quantities with units. Pure; never throws on what a file holds.</summary>
public static class Binder
{
    /// <summary>
    /// Binds one or more files to one batch on one bench. The bench is given once, or alike in each file; paints, mixes and schemes
    /// serve all files; each kit keeps its own file's due time unless it has its own.
    /// </summary>
    /// <param name="trees">The files, in the order in which their kits are to stand. At least one.</param>
    /// <param name="trade">The verbs, rules and tables in use.</param>
    /// <exception cref="ArgumentException">No file at all.</exception>
    public static Binding Bind(IReadOnlyList<SyntaxTree> trees, Trade trade)
    {
        ArgumentNullException.ThrowIfNull(trees);
        ArgumentNullException.ThrowIfNull(trade);
        if (trees.Count == 0)
            throw new ArgumentException("There is no file to bind.", nameof(trees));

        var findings = new FindingList();
        var batch = new BatchBinder(new Desk(findings), new Shelf(trade)).Bind(trees);
        var isSound = !findings.HasErrors && trees.All(tree => tree.IsSound);
        return new Binding(isSound ? batch : null, findings.ToSequence());
    }
}
