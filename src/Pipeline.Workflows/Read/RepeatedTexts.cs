namespace Pipeline.Workflows;

/// <summary>
/// A file says <c>with</c> and <c>airbrush</c> thousands of times. One text is kept for all of them, so that a large file takes
/// little memory and equal texts are found equal at once.
/// </summary>
internal sealed class RepeatedTexts
{
    private const int Longest = 32;
    private readonly string?[] seen = new string?[1024];

    /// <summary>A text equal to the given one, the same for most that are equal.</summary>
    public string One(string text)
    {
        if (text.Length is 0 or > Longest)
            return text;
        var slot = (text.Length + text[0] * 31 + text[^1] * 37 + text[text.Length / 2] * 41) & (seen.Length - 1);
        if (seen[slot] is { } known && known == text)
            return known;
        seen[slot] = text;
        return text;
    }
}
