using System.CommandLine;

namespace Pipeline.Cli;

/// <summary><c>pipeline host</c>.</summary>
internal static class HostWords
{
    public static Command Command()
    {
        var folder = new Argument<string>("DIR") { Description = "The folder to watch." };
        var command = new Command(Vocabulary.Host.Name, Vocabulary.Host.Summary) { folder };
        command.SetAction((parsed, cancel) => Hosting.Run(Room.Of(parsed, "information"), parsed.GetValue(folder)!, cancel));
        return command;
    }
}
