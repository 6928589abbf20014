namespace Pipeline.Cli;

/// <summary>A command or an option as help shows it.</summary>
/// <param name="Name">What is typed.</param>
/// <param name="Takes">What is typed after it; empty if nothing.</param>
/// <param name="Summary">What it does, in a sentence or two.</param>
internal sealed record Word(string Name, string Takes, string Summary)
{
    /// <summary>All that is typed.</summary>
    public string Typed => Takes.Length == 0 ? Name : $"{Name} {Takes}";
}

/// <summary>The words of the program itself, apart from what parses them, so that help is there at once.</summary>
internal static class Vocabulary
{
    public const string Program = "Checks and plans the painting of miniatures and scale models, from a workflow file to the evenings at the bench.";

    public static readonly Word Check = new("check", "FILE…", "Says what would go wrong in the routes of the files. Silent and 0 if nothing would.");
    public static readonly Word Plan = new("plan", "FILE…", "Lays the work of the files out over the evenings at the bench. Ctrl-C gives the best plan so far.");
    public static readonly Word Why = new("why", "FILE [STEP]", "Explains a step: its surfaces, what each rule made of it, when it is planned and why then. Or why a plan is as long as it is.");
    public static readonly Word Compare = new("compare", "A.json B.json", "Says what is different between two plans of a batch: what moved, and what it costs or saves.");
    public static readonly Word Verbs = new("verbs", "[NAME]", "Lists the verbs a route may use, or shows one.");
    public static readonly Word Rules = new("rules", "[NAME]", "Lists the rules that judge a route, or shows one.");
    public static readonly Word Tables = new("tables", "[NAME]", "Lists the tables of the trade, or shows one: each row with its source.");
    public static readonly Word Schema = new("schema", "", "Prints the JSON Schema of workflow files with the verbs in use, for editors.");
    public static readonly Word Host = new("host", "DIR", "Watches a folder, plans each workflow file that arrives or changes, and lays the results beside it.");

    public static readonly Word Help = new("--help", "", "Shows this.");
    public static readonly Word Version = new("--version", "", "Shows the program's version.");
    public static readonly Word Plugins = new("--plugins", "DIR", "A folder that holds a folder per plugin, besides the usual ones. May be given several times.");
    public static readonly Word Log = new("--log", "quiet|error|warning|information|debug", "How much to log. Warnings if left out; the host logs information.");
    public static readonly Word LogFile = new("--log-file", "FILE", "Log to a file, as lines of JSON if its name ends in .json, instead of to standard error.");

    /// <summary>The commands, in the order in which they are shown.</summary>
    public static readonly Word[] Commands = [Check, Plan, Why, Compare, Verbs, Rules, Tables, Schema, Host];

    /// <summary>The options of the program and of every command.</summary>
    public static readonly Word[] Options = [Help, Version, Plugins, Log, LogFile];
}
