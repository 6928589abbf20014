using Pipeline.Abstractions;
using Pipeline.Engine;

namespace Pipeline.Cli;

/// <summary>What goes wrong with a call, on standard error, with what to do about it.</summary>
internal static class Complaint
{
    /// <summary>The call or its input cannot be used.</summary>
    public static int Of(params IEnumerable<Refusal> refusals)
    {
        foreach (var refusal in refusals)
            Console.Error.Write($"pipeline: {OneLine(refusal.Message)}\n    do: {OneLine(refusal.Hint)}\n");
        return ExitCode.Unusable;
    }

    /// <summary>A word of the call that is not known.</summary>
    public static string Word(string word, string? near) => $"'{word}' is not known here{(near is null ? "" : $"; did you mean '{near}'?")}";

    /// <summary>Something about the call.</summary>
    public static void OfCall(string message) => Console.Error.Write($"pipeline: {OneLine(message)}\n");

    /// <summary>A mistake of the program itself.</summary>
    public static int OfBreakdown(string what, string? report)
    {
        Console.Error.Write($"pipeline: internal error: {OneLine(what)}\n");
        Console.Error.Write(report is null
            ? "    This is a mistake of the program; no report of it could be written.\n"
            : $"    This is a mistake of the program; its details are in {OneLine(report)}\n");
        return ExitCode.Broke;
    }

    /// <summary>Standard output cannot be written.</summary>
    public static int OfOutput(IOException fault)
    {
        try
        {
            Console.Error.Write($"pipeline: cannot write the output: {OneLine(fault.Message)}\n");
        }
        catch (IOException)
        {
            // nothing left to say it on
        }

        return ExitCode.Unusable;
    }

    /// <summary>One for each plugin that does not work, without stopping anything.</summary>
    public static void OfPlugins(Sequence<Finding> findings)
    {
        foreach (var finding in findings)
            Console.Error.Write($"{OneLine(finding.Place.ToString())}: error: {OneLine(finding.Message)}\n");
    }

    /// <summary>Names from outside may hold what a terminal would obey.</summary>
    private static string OneLine(string text) => new([.. text.Select(letter => char.IsControl(letter) ? '\uFFFD' : letter)]);
}
