using System.CommandLine;

namespace Pipeline.Cli;

/// <summary><c>pipeline host</c>.</summary>
internal static class HostWords
{
    public static Command Command()
    {
        var folder = new Argument<string>("DIR") { Description = "The folder to watch." };
        var command = new Command("host", "Watches a folder, plans each workflow file that arrives or changes, and lays the results beside it.") { folder };
        command.SetAction((parsed, cancel) => Hosting.Run(Room.Of(parsed, "information"), parsed.GetValue(folder)!, cancel));
        return command;
    }
}
