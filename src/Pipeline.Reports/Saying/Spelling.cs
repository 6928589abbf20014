namespace Pipeline.Reports;

/// <summary>Names of the code as people write them.</summary>
internal static class Spelling
{
    /// <summary><c>PanelLine</c> is <c>panel line</c> or, parted by a hyphen, <c>panel-line</c>.</summary>
    public static string Parted(string word, char by) =>
        string.Concat(word.Select((letter, index) => char.IsUpper(letter) && index > 0 ? $"{by}{char.ToLowerInvariant(letter)}" : char.ToLowerInvariant(letter).ToString()));

    /// <summary>A choice as a workflow file writes it.</summary>
    public static string Of<T>(T choice)
        where T : struct, Enum => Parted(choice.ToString(), '-');
}
