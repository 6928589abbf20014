using Pipeline.Abstractions;
using Pipeline.Engine;
using Pipeline.Reports;

namespace Pipeline.Cli;

/// <summary>Answers <c>pipeline check</c>.</summary>
internal static class Checking
{
    public static async Task<int> Run(Room room, string[] files, string name, bool asJson)
    {
        if (room.Parts is not { } parts)
            return Complaint.Of(room.Refusal!);
        if (InputWords.Of(files, name, out var refusal) is not { } inputs)
            return Complaint.Of(refusal!);
        switch (await Composition.Engine(parts).Send(new CheckFiles(inputs)).ConfigureAwait(false))
        {
            case Answer<Checked>.Given { Value: var done }:
                if (asJson)
                    Console.Out.Write(FindingsJson.Render(done.Findings));
                else
                    Say(done.Findings, done);
                return done.HasErrors ? ExitCode.Errors : ExitCode.Fine;
            case Answer<Checked>.Refused refused:
                return Complaint.Of(refused.Why);
            case Answer<Checked>.Broke broke:
                return Complaint.OfBreakdown(broke.What, broke.Report);
            case var other:
                throw new InvalidOperationException($"Unknown answer {other}.");
        }
    }

    /// <summary>Findings on standard error; nothing if there are none.</summary>
    public static void Say(Sequence<Finding> findings, Checked done)
    {
        if (!findings.IsEmpty)
            FindingsText.Write(findings, SourcesOf(done), Screen.Diagnostics);
    }

    /// <summary>The texts by the names that places use.</summary>
    public static Dictionary<string, string> SourcesOf(Checked done)
    {
        var sources = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var text in done.Texts)
            sources.TryAdd(text.Name, text.Text);
        return sources;
    }
}

/// <summary>The files as the painter names them.</summary>
internal static class InputWords
{
    /// <summary>The inputs; null if standard input is asked for twice.</summary>
    public static Sequence<WorkflowInput>? Of(string[] files, string name, out Refusal? refusal)
    {
        refusal = null;
        if (files.Count(file => file == "-") > 1)
        {
            refusal = new Refusal("standard input can be read only once", "Give - once.");
            return null;
        }

        if (files.GroupBy(file => file, StringComparer.Ordinal).FirstOrDefault(group => group.Count() > 1) is { } twice)
        {
            refusal = new Refusal($"the file {twice.Key} is given twice", "Give each file once.");
            return null;
        }

        return files
            .Select<string, WorkflowInput>(file => file == "-"
                ? new WorkflowInput.FromStream(name, Console.OpenStandardInput())
                : new WorkflowInput.FromFile(file))
            .ToSequence();
    }
}
