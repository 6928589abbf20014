namespace Pipeline.Workflows;

/// <summary>What a text was found to say: a value, or what is wrong with it in a painter's words.</summary>
/// <typeparam name="T">The value's type.</typeparam>
public readonly record struct Written<T>
{
    private Written(T value, string? wrong) => (Value, Wrong) = (value, wrong);

    /// <summary>The value; of no meaning if anything is wrong.</summary>
    public T Value { get; }

    /// <summary>What is wrong, as a sentence; null if nothing is.</summary>
    public string? Wrong { get; }

    /// <summary>A text that says a value.</summary>
    internal static Written<T> Says(T value) => new(value, null);

    /// <summary>A text that does not.</summary>
    internal static Written<T> Not(string wrong) => new(default!, wrong);

    /// <summary>The same with the value changed, if there is one.</summary>
    internal Written<TOther> To<TOther>(Func<T, TOther> change) =>
        Wrong is null ? Written<TOther>.Says(change(Value)) : Written<TOther>.Not(Wrong);
}
