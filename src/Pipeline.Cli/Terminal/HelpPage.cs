using System.CommandLine;
using System.CommandLine.Invocation;
using System.Text;

namespace Pipeline.Cli;

/// <summary>Help in 80 columns, on standard output. Written by ourselves, since it is what must start fastest.</summary>
internal sealed class HelpPage : SynchronousCommandLineAction
{
    private const int Width = 80;
    private const int Indent = 4;

    /// <summary>Help on the program as a whole.</summary>
    public static int OfProgram()
    {
        var page = new StringBuilder();
        Wrap(page, Vocabulary.Program, 0);
        page.Append("\nUsage: pipeline COMMAND [OPTIONS]\n\nCommands:\n");
        foreach (var command in Vocabulary.Commands)
            Entry(page, command.Typed, command.Summary);
        page.Append("\n'pipeline COMMAND --help' says more about one of them.\n\nOptions:\n");
        foreach (var option in Vocabulary.Options)
            Entry(page, option.Typed, option.Summary);
        Console.Out.Write(page.ToString());
        return ExitCode.Fine;
    }

    /// <inheritdoc/>
    public override int Invoke(ParseResult parseResult)
    {
        var command = parseResult.CommandResult.Command;
        if (command is RootCommand)
            return OfProgram();
        var page = new StringBuilder();
        Wrap(page, command.Description ?? "", 0);
        page.Append("\nUsage: ").Append($"pipeline {command.Name}{Named(command.Arguments)} [OPTIONS]").Append('\n');
        if (command.Arguments.Count > 0)
        {
            page.Append("\nArguments:\n");
            foreach (var argument in command.Arguments)
                Entry(page, argument.Name, argument.Description);
        }

        page.Append("\nOptions:\n");
        foreach (var option in command.Options.Concat(CommonWords.All))
            Entry(page, option.HelpName is { } value ? $"{option.Name} {value}" : option.Name, option.Description);
        Console.Out.Write(page.ToString());
        return ExitCode.Fine;
    }

    private static string Named(IList<Argument> arguments)
    {
        var named = "";
        foreach (var argument in arguments)
        {
            var name = argument.Arity.MaximumNumberOfValues > 1 ? argument.Name + "…" : argument.Name;
            named += argument.Arity.MinimumNumberOfValues == 0 ? $" [{name}]" : $" {name}";
        }

        return named;
    }

    private static void Entry(StringBuilder page, string name, string? description)
    {
        page.Append(' ', Indent / 2).Append(name).Append('\n');
        Wrap(page, description ?? "", Indent * 2);
    }

    private static void Wrap(StringBuilder page, string text, int indent)
    {
        var column = 0;
        foreach (var word in text.Split(' '))
        {
            if (column > 0 && column + 1 + word.Length > Width)
            {
                page.Append('\n');
                column = 0;
            }

            if (column == 0)
            {
                page.Append(' ', indent).Append(word);
                column = indent + word.Length;
            }
            else
            {
                page.Append(' ').Append(word);
                column += 1 + word.Length;
            }
        }

        page.Append('\n');
    }
}
