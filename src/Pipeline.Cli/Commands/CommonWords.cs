using System.CommandLine;
using System.CommandLine.Parsing;
using Pipeline.Workflows;

namespace Pipeline.Cli;

/// <summary>Options every command takes.</summary>
internal static class CommonWords
{
    /// <summary>Further folders of plugins.</summary>
    public static readonly Option<string[]> Plugins = new(Vocabulary.Plugins.Name)
    {
        Description = Vocabulary.Plugins.Summary,
        HelpName = Vocabulary.Plugins.Takes,
        Recursive = true,
        Arity = ArgumentArity.OneOrMore,
        AllowMultipleArgumentsPerToken = false,
    };

    /// <summary>How much is logged.</summary>
    public static readonly Option<string?> Log = OneOf(
        Vocabulary.Log.Name, Vocabulary.Log.Summary, Vocabulary.Log.Takes.Split('|'));

    /// <summary>Where the log goes.</summary>
    public static readonly Option<string?> LogFile = new(Vocabulary.LogFile.Name)
    {
        Description = Vocabulary.LogFile.Summary,
        HelpName = Vocabulary.LogFile.Takes,
        Recursive = true,
    };

    /// <summary>All of them.</summary>
    public static IEnumerable<Option> All
    {
        get
        {
            Log.Recursive = true;
            return [Plugins, Log, LogFile];
        }
    }

    /// <summary>The workflow files.</summary>
    public static Argument<string[]> Files()
    {
        var files = new Argument<string[]>("FILE")
        {
            Description = "Workflow files, taken together as one batch; - for standard input.",
            Arity = ArgumentArity.OneOrMore,
        };

        // a mistyped option would else be taken for a file
        files.Validators.Add(result =>
        {
            var options = (result.Parent as CommandResult)?.Command.Options.Concat(All).Select(option => option.Name).ToList() ?? [];
            foreach (var word in result.Tokens.Select(token => token.Value).Where(word => word.StartsWith('-') && word.Length > 1 && !File.Exists(word)))
                result.AddError(Complaint.Word(word, new Nearest().To(word, options)));
        });
        return files;
    }

    /// <summary>What standard input is called.</summary>
    public static Option<string> Name() => new("--name")
    {
        Description = "The file name that findings show for standard input.",
        HelpName = "NAME",
        DefaultValueFactory = _ => "stdin",
    };

    /// <summary>An option that takes one of a few words; null if left out.</summary>
    public static Option<string?> OneOf(string name, string description, params string[] words)
    {
        var option = new Option<string?>(name) { Description = description, HelpName = string.Join('|', words) };
        option.AcceptOnlyFromAmong(words);
        return option;
    }
}
