using System.CommandLine;

namespace Pipeline.Cli;

/// <summary><c>pipeline verbs</c>, <c>pipeline rules</c>, <c>pipeline schema</c>.</summary>
internal static class ListWords
{
    public static Command Verbs()
    {
        var name = new Argument<string?>("NAME") { Description = "Show the keys of this verb.", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command(Vocabulary.Verbs.Name, Vocabulary.Verbs.Summary) { name };
        command.SetAction((parsed, _) => Listing.Verbs(Room.Of(parsed), parsed.GetValue(name)));
        return command;
    }

    public static Command Rules()
    {
        var name = new Argument<string?>("NAME") { Description = "Show the page of this rule.", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command(Vocabulary.Rules.Name, Vocabulary.Rules.Summary) { name };
        command.SetAction((parsed, _) => Listing.Rules(Room.Of(parsed), parsed.GetValue(name)));
        return command;
    }

    public static Command Schema()
    {
        var command = new Command(Vocabulary.Schema.Name, Vocabulary.Schema.Summary);
        command.SetAction((parsed, _) => Listing.Schema(Room.Of(parsed)));
        return command;
    }
}
