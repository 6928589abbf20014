using System.CommandLine;

namespace Pipeline.Cli;

/// <summary><c>pipeline tables</c>.</summary>
internal static class TablesWords
{
    /// <summary>What was asked for.</summary>
    internal sealed record Wish(string? Name, string[] For, bool AsJson);

    public static Command Command()
    {
        var name = new Argument<string?>("NAME") { Description = "Show this table; with --as json leave it out for all of them.", Arity = ArgumentArity.ZeroOrOne };
        var files = new Option<string[]>("--for")
        {
            Description = "Show what holds for this workflow file. May be given several times, for files of one batch.",
            HelpName = "FILE",
            Arity = ArgumentArity.OneOrMore,
            AllowMultipleArgumentsPerToken = false,
        };
        var form = CommonWords.OneOf("--as", "text: for reading, the usual. json: every row, for programs.", "text", "json");
        var command = new Command(Vocabulary.Tables.Name, Vocabulary.Tables.Summary) { name, files, form };
        command.SetAction((parsed, _) => TablesShowing.Run(
            Room.Of(parsed), new Wish(parsed.GetValue(name), parsed.GetValue(files) ?? [], parsed.GetValue(form) == "json")));
        return command;
    }
}
