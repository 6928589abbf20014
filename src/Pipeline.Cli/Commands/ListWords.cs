using System.CommandLine;

namespace Pipeline.Cli;

/// <summary><c>pipeline verbs</c>, <c>pipeline rules</c>, <c>pipeline schema</c>.</summary>
internal static class ListWords
{
    public static Command Verbs()
    {
        var name = new Argument<string?>("NAME") { Description = "Show the keys of this verb.", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command("verbs", "Lists the verbs a route may use, or shows one.") { name };
        command.SetAction((parsed, _) => Listing.Verbs(Room.Of(parsed), parsed.GetValue(name)));
        return command;
    }

    public static Command Rules()
    {
        var name = new Argument<string?>("NAME") { Description = "Show the page of this rule.", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command("rules", "Lists the rules that judge a route, or shows one.") { name };
        command.SetAction((parsed, _) => Listing.Rules(Room.Of(parsed), parsed.GetValue(name)));
        return command;
    }

    public static Command Schema()
    {
        var command = new Command("schema", "Prints the JSON Schema of workflow files with the verbs in use, for editors.");
        command.SetAction((parsed, _) => Listing.Schema(Room.Of(parsed)));
        return command;
    }
}
