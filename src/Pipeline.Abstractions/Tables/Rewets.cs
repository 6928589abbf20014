namespace Pipeline.Abstractions;

/// <summary>What a liquid does to a coat it is rubbed on.</summary>
public enum Bite
{
    /// <summary>Nothing.</summary>
    Nothing,

    /// <summary>Softens it if rubbed.</summary>
    Softens,

    /// <summary>Lifts it.</summary>
    Lifts,

    /// <summary>Strips it.</summary>
    Strips,
}

/// <summary>A cell of the table of what re-wets what. Of two rows about the same pair the later counts.</summary>
public sealed record Rewets
{
    /// <summary>The liquid.</summary>
    public required Liquid Liquid { get; init; }

    /// <summary>The family of the coat, by its name.</summary>
    public required string Coat { get; init; }

    /// <summary>What it does while the coat is dry but has not cured.</summary>
    public required Bite WhenDry { get; init; }

    /// <summary>What it does once the coat has cured.</summary>
    public required Bite WhenCured { get; init; }

    /// <summary>Where the row comes from; <c>common practice</c> where nobody published it.</summary>
    public required string Source { get; init; }
}
