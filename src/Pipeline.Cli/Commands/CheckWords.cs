using System.CommandLine;

namespace Pipeline.Cli;

/// <summary><c>pipeline check</c>.</summary>
internal static class CheckWords
{
    public static Command Command()
    {
        var files = CommonWords.Files();
        var name = CommonWords.Name();
        var form = CommonWords.OneOf("--as", "text: findings on standard error, the usual. json: findings on standard output.", "text", "json");
        var command = new Command("check", "Says what would go wrong in the routes of the files. Silent and 0 if nothing would.") { files, form, name };
        command.SetAction((parsed, _) => Checking.Run(Room.Of(parsed), parsed.GetValue(files)!, parsed.GetValue(name)!, parsed.GetValue(form) == "json"));
        return command;
    }
}
