using System.CommandLine;

namespace Pipeline.Cli;

/// <summary><c>pipeline why</c>.</summary>
internal static class WhyWords
{
    /// <summary>What was asked for.</summary>
    internal sealed record Wish(string Place, string[] With, string? Model);

    public static Command Command()
    {
        var place = new Argument<string>("FILE:LINE") { Description = "A workflow file and a line on which a step stands." };
        var with = new Option<string[]>("--with") { Description = "A further file of the same batch. May be given several times.", HelpName = "FILE" };
        var model = new Option<string?>("--model") { Description = "Of the models that follow a scheme, which one to show.", HelpName = "NAME" };
        var command = new Command("why", "Explains a step: the surfaces before and after it, and what each rule made of it.") { place, with, model };
        command.SetAction((parsed, _) => Explaining.Run(
            Room.Of(parsed),
            new Wish(parsed.GetValue(place)!, parsed.GetValue(with) ?? [], parsed.GetValue(model))));
        return command;
    }
}
