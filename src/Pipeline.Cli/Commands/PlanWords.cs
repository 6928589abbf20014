using System.CommandLine;

namespace Pipeline.Cli;

/// <summary><c>pipeline plan</c>.</summary>
internal static class PlanWords
{
    /// <summary>What was asked for.</summary>
    internal sealed record Wish(string[] Files, string Name, SearchWords.Wish Search, string? Form, string? Out);

    public static Command Command()
    {
        var files = CommonWords.Files();
        var name = CommonWords.Name();
        var search = new SearchWords();
        var form = CommonWords.OneOf("--as", "How the plan is printed: text is the usual.", "text", "md", "json");
        var into = new Option<string?>("--out") { Description = "Write plan.txt, plan.md, plan.json and findings.json into this folder and print their names.", HelpName = "DIR" };
        var command = new Command(Vocabulary.Plan.Name, Vocabulary.Plan.Summary) { files, form, into, name };
        foreach (var option in search.All)
            command.Options.Add(option);
        command.SetAction((parsed, _) => Planning.Run(
            Room.Of(parsed),
            new Wish(parsed.GetValue(files)!, parsed.GetValue(name)!, search.Of(parsed), parsed.GetValue(form), parsed.GetValue(into))));
        return command;
    }
}
