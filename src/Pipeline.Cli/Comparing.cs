using Pipeline.Engine;
using Pipeline.Planning;
using Pipeline.Reports;

namespace Pipeline.Cli;

/// <summary>Answers <c>pipeline compare</c>.</summary>
internal static class Comparing
{
    public static async Task<int> Run(Room room, CompareWords.Wish wish)
    {
        if (room.Parts is not { } parts)
            return Complaint.Of(room.Refusal!);
        return await Composition.Engine(parts).Send(new ComparePlans(wish.Before, wish.After)).ConfigureAwait(false) switch
        {
            Answer<PlanComparison>.Given given => Show(given.Value, wish.Form),
            Answer<PlanComparison>.Refused refused => Complaint.Of(refused.Why),
            Answer<PlanComparison>.Broke broke => Complaint.OfBreakdown(broke.What, broke.Report),
            var other => throw new InvalidOperationException($"Unknown answer {other}."),
        };
    }

    private static int Show(PlanComparison both, string? form)
    {
        switch (form)
        {
            case "md":
                Console.Out.Write(ComparisonMarkdown.Render(both));
                break;
            case "json":
                Console.Out.Write(ComparisonJson.Render(both));
                break;
            default:
                ComparisonText.Write(both, Screen.Results);
                break;
        }

        return ExitCode.Fine;
    }
}
