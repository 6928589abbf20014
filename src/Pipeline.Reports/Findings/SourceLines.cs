namespace Pipeline.Reports;

/// <summary>The lines of the files that were read, looked up by number.</summary>
internal sealed class SourceLines(IReadOnlyDictionary<string, string> sources)
{
    private readonly Dictionary<string, int[]> starts = [];

    /// <summary>A line without its end, or null if the file or the line is not there.</summary>
    public string? Line(string file, int line)
    {
        if (!sources.TryGetValue(file, out var text))
            return null;
        if (!starts.TryGetValue(file, out var begins))
            starts[file] = begins = Begins(text);
        if (line < 1 || line > begins.Length)
            return null;
        var end = line < begins.Length ? begins[line] : text.Length;
        return text[begins[line - 1]..end].TrimEnd('\r', '\n');
    }

    private static int[] Begins(string text)
    {
        var begins = new List<int> { 0 };
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '\n')
                begins.Add(i + 1);
        }

        return [.. begins];
    }
}
