using Spectre.Console;

namespace Pipeline.Cli;

/// <summary>The two streams as reports see them: colour and width for a terminal, plain 80 columns for all else.</summary>
internal static class Screen
{
    /// <summary>Standard output.</summary>
    public static IAnsiConsole Results => For(Console.Out, Console.IsOutputRedirected);

    /// <summary>Standard error.</summary>
    public static IAnsiConsole Diagnostics => For(Console.Error, Console.IsErrorRedirected);

    /// <summary>True if a person looks at standard error and it can be written over.</summary>
    public static bool CanShowProgress => !Console.IsErrorRedirected && !IsDumb;

    /// <summary>Text of a file for standard output: as it is for a pipe, without what a terminal would obey for a person.</summary>
    public static string Harmless(string text) => Console.IsOutputRedirected
        ? text
        : new string([.. text.Select(letter => char.IsControl(letter) && letter != '\n' ? ' ' : letter)]);

    // no-color.org: present and not empty
    private static bool NoColour => Environment.GetEnvironmentVariable("NO_COLOR") is { Length: > 0 };

    private static bool IsDumb => Environment.GetEnvironmentVariable("TERM") is "dumb";

    private static IAnsiConsole For(TextWriter writer, bool isRedirected)
    {
        var isPlain = isRedirected || NoColour || IsDumb;
        return AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(writer),
            Ansi = isPlain ? AnsiSupport.No : AnsiSupport.Detect,
            ColorSystem = isPlain ? ColorSystemSupport.NoColors : ColorSystemSupport.Detect,
            Interactive = InteractionSupport.No,
        });
    }
}
