using Pipeline.Abstractions;
using Pipeline.Engine;
using Pipeline.Reports;
using TextStyle = Pipeline.Reports.TextStyle;

namespace Pipeline.Cli;

/// <summary>Answers <c>pipeline plan</c>.</summary>
internal static class Planning
{
    public static async Task<int> Run(Room room, PlanWords.Wish wish)
    {
        if (room.Parts is not { } parts)
            return Complaint.Of(room.Refusal!);
        if (InputWords.Of(wish.Files, wish.Name, out var refusal) is not { } inputs)
            return Complaint.Of(refusal!);
        if (wish.Search.Request(inputs, out refusal) is not { } request)
            return Complaint.Of(refusal!);
        var (answer, wasStopped) = await Searching.Send(parts, request).ConfigureAwait(false);
        return answer switch
        {
            Answer<PlanResult>.Given given => Show(given.Value, wish, parts.Disk, wasStopped),
            Answer<PlanResult>.Refused refused => Complaint.Of(refused.Why),
            Answer<PlanResult>.Broke broke => Complaint.OfBreakdown(broke.What, broke.Report),
            _ => throw new InvalidOperationException($"Unknown answer {answer}."),
        };
    }

    private static int Show(PlanResult result, PlanWords.Wish wish, IDisk disk, bool wasStopped)
    {
        Checking.Say(result.Checked.Findings, result.Checked);
        switch (result)
        {
            case PlanResult.Planned planned:
                if (wasStopped)
                    Console.Error.Write("pipeline: stopped as asked; this is the best plan so far\n");
                if (planned.IsLate && (wish.Out is not null || wish.Form is not null and not "text" || Console.IsOutputRedirected))
                    Checking.Say(planned.Plan.Findings.Where(finding => finding.Level == Level.Error).ToSequence(), planned.Checked);
                return Give(planned, wish, disk) is { } refusal ? Complaint.Of(refusal)
                    : planned.IsLate ? ExitCode.NoPlan
                    : planned.Checked.HasErrors ? ExitCode.Errors
                    : ExitCode.Fine;
            case PlanResult.Impossible when wasStopped:
                Console.Error.Write("pipeline: stopped before there was a plan\n");
                return ExitCode.Stopped;
            case PlanResult.Impossible none:
                NoPlanText.Write(none.Outcome, Checking.SourcesOf(none.Checked), Screen.Diagnostics);
                WriteFindings(none.Checked.Findings.Concat(none.Outcome.Reasons).ToSequence(), wish, disk);
                return ExitCode.NoPlan;
            default:
                Console.Error.Write(result.Checked.Walked is null
                    ? "pipeline: not planned; mend the errors above first\n"
                    : "pipeline: not planned; mend the errors above first, or silence a rule with a reason where you know better\n");
                WriteFindings(result.Checked.Findings, wish, disk);
                return ExitCode.Errors;
        }
    }

    private static Refusal? Give(PlanResult.Planned planned, PlanWords.Wish wish, IDisk disk)
    {
        var plan = planned.Plan;
        if (wish.Out is { } folder)
        {
            var (written, refusal) = ResultFolder.Write(disk, folder,
            [
                ("plan.txt", PlanText.Render(plan, TextStyle.Plain)),
                ("plan.md", PlanMarkdown.Render(plan)),
                ("plan.json", PlanJson.Render(plan)),
                ("findings.json", FindingsJson.Render(planned.Checked.Findings.Concat(plan.Findings).ToSequence())),
            ]);
            foreach (var path in written)
                Console.Out.Write($"{path}\n");
            return refusal;
        }

        switch (wish.Form)
        {
            case "md":
                Console.Out.Write(PlanMarkdown.Render(plan));
                break;
            case "json":
                Console.Out.Write(PlanJson.Render(plan));
                break;
            default:
                PlanText.Write(plan, Screen.Results);
                break;
        }

        return null;
    }

    /// <summary>Without a plan, the folder gets the findings alone.</summary>
    private static void WriteFindings(Sequence<Finding> findings, PlanWords.Wish wish, IDisk disk)
    {
        if (wish.Out is not { } folder)
            return;
        var (written, refusal) = ResultFolder.Write(disk, folder, [("findings.json", FindingsJson.Render(findings))]);
        foreach (var path in written)
            Console.Out.Write($"{path}\n");
        if (refusal is not null)
            Complaint.Of(refusal);
    }
}
