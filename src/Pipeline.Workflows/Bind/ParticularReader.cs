namespace Pipeline.Workflows;

/// <summary>Reads the value of one of a verb's own keys.</summary>
internal static class ParticularReader
{
    /// <summary>The value, boxed; null and a finding if there is none.</summary>
    public static object? Read(StepNames names, Particular particular, SyntaxNode node)
    {
        if (!particular.IsList)
            return particular.Kind.Read(names, node);
        var items = names.Desk.OneOrMore(node, $"one or more of: {particular.Kind.Expected}");
        var values = new List<object>(items.Count);
        foreach (var item in items)
        {
            if (particular.Kind.Read(names, item) is { } value)
                values.Add(value);
        }

        return items.Count > 0 && values.Count == items.Count ? particular.Kind.ToSequence(values) : null;
    }
}
