using System.CommandLine;

namespace Pipeline.Cli;

/// <summary><c>pipeline why</c>.</summary>
internal static class WhyWords
{
    /// <summary>What was asked for.</summary>
    /// <param name="Place">A file, or a file and a line.</param>
    /// <param name="Step">What a step is called; null if a line says which, or none is asked for.</param>
    /// <param name="Late">True to explain the whole plan.</param>
    /// <param name="With">Further files of the batch.</param>
    /// <param name="Model">Which model.</param>
    /// <param name="Search">How to plan.</param>
    /// <param name="Plans">True to plan for a step that is given by its line, too.</param>
    internal sealed record Wish(string Place, string? Step, bool Late, string[] With, string? Model, SearchWords.Wish Search, bool Plans);

    public static Command Command()
    {
        var place = new Argument<string>("FILE") { Description = "A workflow file; with a line on which a step stands, such as crew.yaml:41, no STEP is needed." };
        var step = new Argument<string?>("STEP")
        {
            Description = "What the step is called: verb, areas, paint or 'as' name, such as \"Line diver: unmask discs\". Shows when it is planned, too.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var late = new Option<bool>("--late") { Description = "Why the plan is not shorter: the chain from the start to the end, what binds, every model's slack, the ways out." };
        var with = new Option<string[]>("--with") { Description = "A further file of the same batch. May be given several times.", HelpName = "FILE" };
        var model = new Option<string?>("--model") { Description = "Of the models that follow a scheme, which one to show; with --late, whose chain.", HelpName = "NAME" };
        var search = new SearchWords();
        var command = new Command(Vocabulary.Why.Name, Vocabulary.Why.Summary) { place, step, late, with, model };
        foreach (var option in search.All)
            command.Options.Add(option);
        command.Validators.Add(result =>
        {
            if (result.GetValue(late) && result.GetValue(step) is not null)
                result.AddError("--late explains the whole plan; leave STEP out");
        });
        command.SetAction((parsed, _) => Explaining.Run(
            Room.Of(parsed),
            new Wish(parsed.GetValue(place)!, parsed.GetValue(step), parsed.GetValue(late), parsed.GetValue(with) ?? [], parsed.GetValue(model), search.Of(parsed), search.AreGiven(parsed))));
        return command;
    }
}
