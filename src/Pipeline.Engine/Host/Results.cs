using System.Text;
using Pipeline.Abstractions;
using Pipeline.Reports;

namespace Pipeline.Engine;

/// <summary>What lies beside a workflow file: its bytes by file name; null for a file that must not be there.</summary>
/// <param name="Result">What came of the file.</param>
/// <param name="Files">In the order in which they are written.</param>
/// <param name="Notice">What to tell when they are written.</param>
internal sealed record Results(HostResult Result, Sequence<(string Name, byte[]? Bytes)> Files, PlanWritten Notice)
{
    /// <summary>The names of what may lie beside a workflow file.</summary>
    public static string[] NamesFor(string workflow)
    {
        var stem = Path.GetFileNameWithoutExtension(workflow);
        return [$"{stem}.findings.json", $"{stem}.plan.md", $"{stem}.plan.json"];
    }

    /// <summary>The results of a file; a plan of an older version is taken away rather than left beside findings of a newer one.</summary>
    public static Results Of(string workflow, Answer<PlanResult> answer) => answer switch
    {
        Answer<PlanResult>.Given { Value: PlanResult.Planned planned } => Made(
            workflow, HostResult.Planned, planned.Checked.Findings.Concat(planned.Plan.Findings).ToSequence(), planned.Plan),
        Answer<PlanResult>.Given { Value: PlanResult.Impossible none } => Made(
            workflow, HostResult.NoPlan, none.Checked.Findings.Concat(none.Outcome.Reasons).ToSequence()),
        Answer<PlanResult>.Given given => Made(workflow, HostResult.Findings, given.Value.Checked.Findings),
        Answer<PlanResult>.Refused refused => Made(workflow, HostResult.Findings, refused.Why.Select(why => AsFinding(workflow, why)).ToSequence()),
        Answer<PlanResult>.Broke broke => Made(workflow, HostResult.Broke, [Broken(workflow, broke)]),
        _ => throw new InvalidOperationException($"Unknown answer {answer}."),
    };

    private static Results Made(string workflow, HostResult result, Sequence<Finding> findings, Planning.Plan? plan = null)
    {
        var names = NamesFor(workflow);
        var errors = findings.Count(finding => finding is { Level: Level.Error, Silenced: null });
        var last = plan?.Finishes.Select(finish => finish.Ready).OrderBy(ready => ready.ToInstant()).Cast<NodaTime.ZonedDateTime?>().LastOrDefault();
        return new Results(
            result,
            [
                (names[0], Encoding.UTF8.GetBytes(FindingsJson.Render(findings))),
                (names[1], plan is null ? null : Encoding.UTF8.GetBytes(PlanMarkdown.Render(plan))),
                (names[2], plan is null ? null : Encoding.UTF8.GetBytes(PlanJson.Render(plan))),
            ],
            new PlanWritten(workflow, result, errors, last));
    }

    private static Finding AsFinding(string workflow, Refusal why) => new()
    {
        Level = Level.Error,
        Place = new Place(workflow, 1, 1),
        Message = $"{char.ToUpperInvariant(why.Message[0])}{why.Message[1..]}.",
        Remedy = why.Hint,
    };

    private static Finding Broken(string workflow, Answer<PlanResult>.Broke broke) => new()
    {
        Level = Level.Error,
        Place = new Place(workflow, 1, 1),
        Message = $"The program itself failed on this file: {broke.What}.",
        Remedy = broke.Report is { } report ? $"This is a mistake of the program; its details are in {report}." : "This is a mistake of the program; please report it.",
    };
}
