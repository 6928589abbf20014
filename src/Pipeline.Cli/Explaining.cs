using System.Globalization;
using Pipeline.Engine;
using Pipeline.Planning;
using Pipeline.Reports;

namespace Pipeline.Cli;

/// <summary>Answers <c>pipeline why</c>.</summary>
internal static class Explaining
{
    public static async Task<int> Run(Room room, WhyWords.Wish wish)
    {
        if (room.Parts is not { } parts)
            return Complaint.Of(room.Refusal!);
        var place = wish.Step is null && !wish.Late ? Place(wish.Place) : null;
        if (place is null && wish.Step is null && !wish.Late)
            return Complaint.Of(new Refusal($"'{wish.Place}' names no line", "Give a file and a line, such as crew.yaml:41, a file and what the step is called, or a file and --late."));
        var file = place?.File ?? wish.Place;
        if (InputWords.Of([file, .. wish.With], "stdin", out var refusal) is not { } inputs || wish.Search.Request(inputs, out refusal) is not { } plan)
            return Complaint.Of(refusal!);
        if (wish.Late)
            return await Late(parts, plan, wish.Model).ConfigureAwait(false);
        StepAt at = place is { } on ? new StepAt.OnLine(on.Line) : new StepAt.Called(wish.Step!);
        var asked = new ExplainStep(inputs, at, wish.Model, place is null || wish.Plans ? plan with { WithWaysOut = false } : null);
        var (answer, wasStopped) = await Searching.Send(parts, asked).ConfigureAwait(false);
        switch (answer)
        {
            case Answer<StepExplained>.Given { Value: { Look: not null } explained }:
                return Show(explained, wasStopped);
            case Answer<StepExplained>.Given { Value: var explained }:
                Checking.Say(explained.Checked.Findings, explained.Checked);
                Console.Error.Write("pipeline: the steps cannot be explained until these mistakes are mended\n");
                return ExitCode.Errors;
            case Answer<StepExplained>.Refused refused:
                return Complaint.Of(refused.Why);
            case Answer<StepExplained>.Broke broke:
                return Complaint.OfBreakdown(broke.What, broke.Report);
            case var other:
                throw new InvalidOperationException($"Unknown answer {other}.");
        }
    }

    private static int Show(StepExplained explained, bool wasStopped)
    {
        var planned = explained is { Plan: PlanResult.Planned { Plan: var plan }, Times: { } times } ? (times, plan) : default((StepReasons, Plan)?);
        WhyText.Write(explained.Look!, explained.Others, Screen.Results, planned);
        if (explained.Plan is { } result && planned is null)
            return NotPlanned(result, wasStopped);
        if (wasStopped)
            Console.Error.Write("pipeline: stopped as asked; the times are those of the best plan so far\n");
        return ExitCode.Fine;
    }

    private static async Task<int> Late(EngineParts parts, PlanFiles plan, string? model)
    {
        var (answer, wasStopped) = await Searching.Send(parts, plan).ConfigureAwait(false);
        switch (answer)
        {
            case Answer<PlanResult>.Given { Value: PlanResult.Planned planned }:
                var models = planned.Plan.Finishes.Select(finish => finish.Model).ToList();
                if (models.Count == 0)
                    return Complaint.Of(new Refusal("nothing is planned, so nothing is late", "Give a batch with steps."));
                if (model is not null && !models.Contains(model))
                    return Complaint.Of(new Refusal($"there is no model '{model}'", $"There are: {string.Join(", ", models)}."));
                LateText.Write(planned.Reasons.Late(model), planned.Plan, Screen.Results);
                if (wasStopped)
                    Console.Error.Write("pipeline: stopped as asked; this is the best plan so far\n");
                return planned.IsLate ? ExitCode.NoPlan : ExitCode.Fine;
            case Answer<PlanResult>.Given given:
                return NotPlanned(given.Value, wasStopped);
            case Answer<PlanResult>.Refused refused:
                return Complaint.Of(refused.Why);
            case Answer<PlanResult>.Broke broke:
                return Complaint.OfBreakdown(broke.What, broke.Report);
            case var other:
                throw new InvalidOperationException($"Unknown answer {other}.");
        }
    }

    private static int NotPlanned(PlanResult result, bool wasStopped)
    {
        switch (result)
        {
            case PlanResult.Impossible when wasStopped:
                Console.Error.Write("pipeline: stopped before there was a plan\n");
                return ExitCode.Stopped;
            case PlanResult.Impossible none:
                NoPlanText.Write(none.Outcome, Checking.SourcesOf(none.Checked), Screen.Diagnostics);
                return ExitCode.NoPlan;
            default:
                Checking.Say(result.Checked.Findings, result.Checked);
                Console.Error.Write("pipeline: not planned; mend the errors above first\n");
                return ExitCode.Errors;
        }
    }

    /// <summary>A file and a line; a column after it, as in findings, is passed over.</summary>
    private static (string File, int Line)? Place(string place)
    {
        var words = place.Split(':');
        for (var last = words.Length - 1; last >= 1 && last >= words.Length - 2; last--)
        {
            var isLine = int.TryParse(words[last], NumberStyles.None, CultureInfo.InvariantCulture, out var line) && line >= 1;
            var isBeforeColumn = last > 1 && int.TryParse(words[last - 1], NumberStyles.None, CultureInfo.InvariantCulture, out _);
            if (isLine && !(isBeforeColumn && last == words.Length - 1))
                return (string.Join(':', words[..last]), line);
        }

        return null;
    }
}
