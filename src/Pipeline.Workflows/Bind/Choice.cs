namespace Pipeline.Workflows;

/// <summary>The words of a choice, from an enum of the contract or of a plugin.</summary>
internal sealed class Choice
{
    private readonly Dictionary<string, object> values = new(StringComparer.Ordinal);

    public Choice(Type type)
    {
        var isDryingState = type == typeof(Abstractions.DryingState);
        Words = [.. Enum.GetNames(type).Select(name => isDryingState ? WordText.Kebab(name) : WordText.Spaced(name))];
        foreach (var name in Enum.GetNames(type))
            values.TryAdd(WordText.Folded(WordText.Spaced(name)), Enum.Parse(type, name));
        Expected = Words.Count == 1 ? Words[0] : string.Join(", ", Words.Take(Words.Count - 1)) + " or " + Words[^1];
    }

    /// <summary>As the reference shows them.</summary>
    public IReadOnlyList<string> Words { get; }

    /// <summary>The words in a row, for a message.</summary>
    public string Expected { get; }

    public Written<object> Read(string text)
    {
        if (values.TryGetValue(text, out var value) || values.TryGetValue(WordText.Folded(text), out value))
            return Written<object>.Says(value);
        return Written<object>.Not(text.Length == 0 ? "Nothing is written here." : $"‘{NumberText.Shown(text)}’ is none of the choices.");
    }

    /// <summary>A choice known beforehand.</summary>
    public static class Of<T>
        where T : struct, Enum
    {
        public static readonly Choice Words = new(typeof(T));

        public static string Expected => Words.Expected;

        public static Written<T> Read(string text) => Words.Read(text).To(value => (T)value);
    }
}
