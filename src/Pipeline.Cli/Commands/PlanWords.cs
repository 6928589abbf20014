using System.CommandLine;

namespace Pipeline.Cli;

/// <summary><c>pipeline plan</c>.</summary>
internal static class PlanWords
{
    /// <summary>What was asked for.</summary>
    internal sealed record Wish(
        string[] Files, string Name, string? From, string? Form, string? Out, string? Pace, string? Effort, ulong Seed);

    public static Command Command()
    {
        var files = CommonWords.Files();
        var name = CommonWords.Name();
        var from = new Option<string?>("--from")
        {
            Description = "Plan nothing before this, in the bench's time zone, such as \"2026-11-30 18:00\". Now if left out.",
            HelpName = "DATE-TIME",
        };
        var form = CommonWords.OneOf("--as", "How the plan is printed: text is the usual.", "text", "md", "json");
        var into = new Option<string?>("--out") { Description = "Write plan.txt, plan.md, plan.json and findings.json into this folder and print their names.", HelpName = "DIR" };
        var pace = CommonWords.OneOf("--pace", "Overrides the file: comfortable keeps to the high drying times, brisk to the low ones.", "comfortable", "brisk");
        var effort = CommonWords.OneOf("--effort", "How hard to look for a better plan, in counted work.", "quick", "usual", "thorough");
        var seed = new Option<ulong>("--seed") { Description = "The same seed gives the same plan.", HelpName = "NUMBER", DefaultValueFactory = _ => 1 };
        var command = new Command("plan", "Lays the work of the files out over the evenings at the bench. Ctrl-C gives the best plan so far.")
        {
            files, from, form, into, pace, effort, seed, name,
        };
        command.SetAction((parsed, _) => Planning.Run(
            Room.Of(parsed),
            new Wish(
                parsed.GetValue(files)!,
                parsed.GetValue(name)!,
                parsed.GetValue(from),
                parsed.GetValue(form),
                parsed.GetValue(into),
                parsed.GetValue(pace),
                parsed.GetValue(effort),
                parsed.GetValue(seed))));
        return command;
    }
}
