using System.CommandLine;

namespace Pipeline.Cli;

/// <summary><c>pipeline compare</c>.</summary>
internal static class CompareWords
{
    /// <summary>What was asked for.</summary>
    internal sealed record Wish(string Before, string After, string? Form);

    public static Command Command()
    {
        var before = new Argument<string>("A.json") { Description = "A plan, as 'pipeline plan --as json' or '--out' wrote it." };
        var after = new Argument<string>("B.json") { Description = "Another plan of the same batch." };
        var form = CommonWords.OneOf("--as", "How the comparison is printed: text is the usual.", "text", "md", "json");
        var command = new Command(Vocabulary.Compare.Name, Vocabulary.Compare.Summary) { before, after, form };
        command.SetAction((parsed, _) => Comparing.Run(Room.Of(parsed), new Wish(parsed.GetValue(before)!, parsed.GetValue(after)!, parsed.GetValue(form))));
        return command;
    }
}
