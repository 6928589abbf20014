using System.CommandLine;

namespace Pipeline.Cli;

/// <summary><c>pipeline verbs</c>, <c>pipeline rules</c>, <c>pipeline schema</c>.</summary>
internal static class ListWords
{
    public static Command Verbs()
    {
        var command = new Command("verbs", "Lists the verbs a route may use.");
        command.SetAction((parsed, _) => Listing.Verbs(Room.Of(parsed)));
        return command;
    }

    public static Command Rules()
    {
        var name = new Argument<string?>("NAME") { Description = "Show the page of this rule.", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command("rules", "Lists the rules that judge a route, or shows one.") { name };
        command.SetAction((parsed, _) => Listing.Rules(Room.Of(parsed), parsed.GetValue(name)));
        return command;
    }
}
