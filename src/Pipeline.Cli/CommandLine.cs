using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.Text;
using Pipeline.Workflows;

namespace Pipeline.Cli;

/// <summary>
/// The words of the command line. Nothing of the engine is touched here: asking for help or the version must not load plugins,
/// host or solver, so each action is a method of its own.
/// </summary>
internal static class CommandLine
{
    /// <summary>Runs the command and returns its exit code.</summary>
    public static int Run(string[] args)
    {
        Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        // what is asked for most often, and first, comes at once: no command is built for it
        if (args is ["--help"])
            return HelpPage.OfProgram();
        var root = Root();
        var parsed = root.Parse(args);
        var configuration = new InvocationConfiguration { EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null };
        try
        {
            if (parsed.Action is ParseErrorAction)
                return NotUnderstood(parsed);
            return parsed.Invoke(configuration);
        }
        catch (IOException fault)
        {
            // standard output is full or gone; a pipe closed by its reader is not reported here at all
            return Complaint.OfOutput(fault);
        }
        catch (OperationCanceledException)
        {
            return ExitCode.Stopped;
        }
        catch (Exception fault)
        {
            return Broke(fault);
        }
    }

    /// <summary>A mistake of ours outside the requests, such as in showing a result. Apart, since it touches the engine.</summary>
    private static int Broke(Exception fault) =>
        Complaint.OfBreakdown($"{fault.Message} ({fault.GetType().Name})", Engine.ThisMachine.Breakdowns.Report("showing the results", fault));

    private static RootCommand Root()
    {
        var root = new RootCommand(Vocabulary.Program);
        root.Subcommands.Add(CheckWords.Command());
        root.Subcommands.Add(PlanWords.Command());
        root.Subcommands.Add(WhyWords.Command());
        root.Subcommands.Add(CompareWords.Command());
        root.Subcommands.Add(ListWords.Verbs());
        root.Subcommands.Add(ListWords.Rules());
        root.Subcommands.Add(TablesWords.Command());
        root.Subcommands.Add(ListWords.Schema());
        root.Subcommands.Add(HostWords.Command());
        foreach (var option in CommonWords.All)
            root.Options.Add(option);
        foreach (var option in root.Options)
        {
            if (option is HelpOption help)
                (help.Action, help.Description) = (new HelpPage(), Vocabulary.Help.Summary);
            else if (option is VersionOption version)
                version.Description = Vocabulary.Version.Summary;
        }

        return root;
    }

    private static int NotUnderstood(ParseResult parsed)
    {
        var command = parsed.CommandResult.Command;
        var name = command is RootCommand ? "pipeline" : $"pipeline {command.Name}";
        var known = command.Subcommands.Select(each => each.Name)
            .Concat(command.Options.Concat(CommonWords.All).Select(option => option.Name))
            .ToList();
        foreach (var word in parsed.UnmatchedTokens)
            Complaint.OfCall(Complaint.Word(word, new Nearest().To(word, known)));
        if (parsed.UnmatchedTokens.Count == 0 && command is RootCommand && parsed.Tokens.Count == 0)
            Complaint.OfCall($"say what to do: {string.Join(", ", command.Subcommands.Select(each => each.Name))}");
        else if (parsed.UnmatchedTokens.Count == 0)
            parsed.Errors.Select(error => string.Join(' ', error.Message.Split(Array.Empty<char>(), StringSplitOptions.RemoveEmptyEntries))).ToList().ForEach(Complaint.OfCall);
        Console.Error.Write($"Try '{name} --help'.\n");
        return ExitCode.Unusable;
    }
}
