using Pipeline.Abstractions;
using Pipeline.Engine;
using Pipeline.Reports;
using Pipeline.Workflows;

namespace Pipeline.Cli;

/// <summary>Answers <c>pipeline tables</c>.</summary>
internal static class TablesShowing
{
    public static async Task<int> Run(Room room, TablesWords.Wish wish)
    {
        if (room.Parts is not { } parts)
            return Complaint.Of(room.Refusal!);
        Sequence<WorkflowInput>? inputs = [];
        if (wish.For.Length > 0 && (inputs = InputWords.Of(wish.For, "stdin", out var refusal)) is null)
            return Complaint.Of(refusal!);
        switch (await Composition.Engine(parts).Send(new ShowTables(inputs.Value)).ConfigureAwait(false))
        {
            case Answer<TablesShown>.Given { Value: { Rows: { } rows } }:
                Complaint.OfPlugins(parts.Plugins.Findings);
                return Show(TradeTables.Of(rows), wish);
            case Answer<TablesShown>.Given { Value: { Checked: { } done } }:
                Checking.Say(done.Findings, done);
                Console.Error.Write("pipeline: the tables of the file cannot be shown until these mistakes are mended\n");
                return ExitCode.Errors;
            case Answer<TablesShown>.Refused refused:
                return Complaint.Of(refused.Why);
            case Answer<TablesShown>.Broke broke:
                return Complaint.OfBreakdown(broke.What, broke.Report);
            case var other:
                throw new InvalidOperationException($"Unknown answer {other}.");
        }
    }

    private static int Show(Sequence<TradeTable> tables, TablesWords.Wish wish)
    {
        var named = wish.Name is null ? tables : tables.Without(table => table.Name != wish.Name);
        if (named.IsEmpty)
        {
            var meant = new Nearest().To(wish.Name!, tables.Select(table => table.Name)) is { } near ? $"Did you mean {near}? " : "";
            return Complaint.Of(new Refusal($"there is no table '{Screen.Harmless(wish.Name!)}'", meant + "pipeline tables lists them all."));
        }

        if (wish.AsJson)
            Console.Out.Write(TablesJson.Render(named));
        else if (wish.Name is not null)
            TablesText.Write(named[0], Screen.Results);
        else
            List(tables);
        return ExitCode.Fine;
    }

    private static void List(Sequence<TradeTable> tables)
    {
        var width = tables.Max(table => table.Name.Length);
        foreach (var table in tables)
            Console.Out.Write($"{table.Name.PadRight(width)}  {table.Says}\n");
    }
}
