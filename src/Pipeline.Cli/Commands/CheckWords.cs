using System.CommandLine;

namespace Pipeline.Cli;

/// <summary><c>pipeline check</c>.</summary>
internal static class CheckWords
{
    /// <summary>What was asked for.</summary>
    internal sealed record Wish(string[] Files, string Name, string? Form, bool Mend, bool Write);

    public static Command Command()
    {
        var files = CommonWords.Files();
        var name = CommonWords.Name();
        var form = CommonWords.OneOf(
            "--as",
            "text: findings on standard error, the usual. json, sarif: findings on standard output, with the edits that mend them.",
            "text", "json", "sarif");
        var mend = new Option<bool>("--mend") { Description = "Print what can be mended surely as a unified diff, and say what remains." };
        var write = new Option<bool>("--write") { Description = "With --mend: change the files." };
        var command = new Command(Vocabulary.Check.Name, Vocabulary.Check.Summary) { files, form, mend, write, name };
        command.Validators.Add(result =>
        {
            if (result.GetValue(write) && !result.GetValue(mend))
                result.AddError("--write goes with --mend");
            if (result.GetValue(mend) && result.GetValue(form) is "json" or "sarif")
                result.AddError("--mend prints a diff; --as json and --as sarif carry the edits without it");
        });
        command.SetAction((parsed, _) => Checking.Run(
            Room.Of(parsed),
            new Wish(parsed.GetValue(files)!, parsed.GetValue(name)!, parsed.GetValue(form), parsed.GetValue(mend), parsed.GetValue(write))));
        return command;
    }
}
