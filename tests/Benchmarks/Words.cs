using System.Globalization;

namespace Pipeline.Benchmarks;

/// <summary>The words a benchmark is called with.</summary>
internal static class Words
{
    /// <summary>The word after an option, or null if the option is not there.</summary>
    public static string? After(string[] args, string option)
    {
        var i = Array.IndexOf(args, option);
        return i >= 0 && i + 1 < args.Length ? args[i + 1] : null;
    }

    /// <summary>The number after an option, or null if the option is not there.</summary>
    public static int? NumberAfter(string[] args, string option) =>
        After(args, option) is { } word ? int.Parse(word, CultureInfo.InvariantCulture) : null;
}
