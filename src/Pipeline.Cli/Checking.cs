using System.Reflection;
using Pipeline.Abstractions;
using Pipeline.Engine;
using Pipeline.Reports;

namespace Pipeline.Cli;

/// <summary>Answers <c>pipeline check</c>.</summary>
internal static class Checking
{
    private static string Version =>
        typeof(Checking).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "0";

    public static async Task<int> Run(Room room, CheckWords.Wish wish)
    {
        if (room.Parts is not { } parts)
            return Complaint.Of(room.Refusal!);
        if (InputWords.Of(wish.Files, wish.Name, out var refusal) is not { } inputs)
            return Complaint.Of(refusal!);
        var engine = Composition.Engine(parts);
        if (wish.Mend)
            return Told(await engine.Send(new MendFiles(inputs, wish.Write)).ConfigureAwait(false), mended => Show(mended, wish.Write));
        var answer = await engine.Send(new CheckFiles(inputs, WithEdits: wish.Form is "json" or "sarif")).ConfigureAwait(false);
        if (wish.Form != "sarif" || answer is not Answer<Checked>.Given { Value: var found })
            return Told(answer, done => Show(done, wish.Form == "json"));
        var names = found.Findings.Select(finding => finding.Rule).OfType<string>().Distinct().ToSequence();
        return Told(await engine.Send(new ListRulePages(names)).ConfigureAwait(false), pages => Show(found, pages));
    }

    private static int Told<T>(Answer<T> answer, Func<T, int> show) => answer switch
    {
        Answer<T>.Given given => show(given.Value),
        Answer<T>.Refused refused => Complaint.Of(refused.Why),
        Answer<T>.Broke broke => Complaint.OfBreakdown(broke.What, broke.Report),
        _ => throw new InvalidOperationException($"Unknown answer {answer}."),
    };

    private static int Show(Checked done, bool asJson)
    {
        if (asJson)
            Console.Out.Write(FindingsJson.Render(done.Findings));
        else
            Say(done.Findings, done);
        return Code(done);
    }

    private static int Show(Checked done, Sequence<PagedRule> pages)
    {
        var rules = pages.Select(page => new RulePage(page.Rule.Name, Level.Warning, page.Rule.Summary, page.Page)).ToSequence();
        Console.Out.Write(FindingsSarif.Render(done.Findings, rules, Version));
        return Code(done);
    }

    private static int Show(Mended mended, bool isWritten)
    {
        foreach (var (before, after) in mended.Before.Texts.Zip(mended.After.Texts))
            Console.Out.Write(Screen.Harmless(UnifiedDiff.Render(before.Name, before.Text, after.Text)));
        var count = mended.Made.Count;
        var remains = mended.After.Findings.Any(finding => finding.Silenced is null);
        var remain = remains ? "; what remains, by the lines of the mended file:" : "; nothing remains";
        if (count == 0 && remains)
            Console.Error.Write("pipeline: nothing of this can be mended surely; it is yours to decide\n");
        if (count > 0)
            Console.Error.Write(FormattableString.Invariant($"pipeline: {count} {(count == 1 ? "mend" : "mends")} {(isWritten ? "written" : "shown, nothing written")}{remain}\n"));
        Say(mended.After.Findings, mended.After);
        return Code(mended.After);
    }

    private static int Code(Checked done) => done.HasErrors ? ExitCode.Errors : ExitCode.Fine;

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
