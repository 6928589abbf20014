namespace Pipeline.Workflows;

/// <summary>How much a file may hold, so that no input can hang or exhaust the program. Each limit is far beyond any real batch.</summary>
public static class ReadingLimits
{
    /// <summary>Largest file, in bytes: 8 MiB. To be checked before a file is loaded, too.</summary>
    public const int LargestFileBytes = 8 * 1024 * 1024;

    /// <summary>Deepest nesting of lists and mappings.</summary>
    public const int DeepestNesting = 64;

    /// <summary>Most keys, values, lists and mappings in one file, with every alias written out.</summary>
    public const int MostNodes = 2_000_000;

    /// <summary>Longest name or key, in characters.</summary>
    public const int LongestName = 200;

    /// <summary>Most mistakes told about one file or batch; beyond them it is only said that there are more.</summary>
    public const int MostFindings = 1_000;
}
