using Pipeline.Planning;
using Spectre.Console;

namespace Pipeline.Reports;

/// <summary>Says that there is no plan, and why.</summary>
public static class NoPlanText
{
    /// <summary>The reasons as text; arguments as for <see cref="FindingsText.Render"/>.</summary>
    public static string Render(PlanOutcome.NoPlan outcome, IReadOnlyDictionary<string, string> sources, TextStyle style) =>
        Set(outcome, sources, style).ToString();

    /// <summary>Puts the reasons on a console, as it suits it.</summary>
    public static void Write(PlanOutcome.NoPlan outcome, IReadOnlyDictionary<string, string> sources, IAnsiConsole console) =>
        Set(outcome, sources, TextStyle.For(console)).WriteTo(console);

    private static Page Set(PlanOutcome.NoPlan outcome, IReadOnlyDictionary<string, string> sources, TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        var page = FindingsText.Set(outcome.Reasons, sources, style);
        page.Blank();
        page.Hung(new Run("No plan: ", Tone.Error), outcome.Reasons.Count switch
        {
            0 => "no schedule satisfies the file.",
            1 => "what is said above cannot be satisfied. Change that place and plan again.",
            _ => "what is said above cannot be satisfied together. Change one of these places and plan again.",
        });
        return page;
    }
}
