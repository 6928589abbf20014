namespace Pipeline.Abstractions;

/// <summary>How a coat may go on another.</summary>
public enum Bearing
{
    /// <summary>As it is.</summary>
    Fine,

    /// <summary>Scuffed first, so that it keys.</summary>
    Scuff,

    /// <summary>As mist coats only, after a try on a card.</summary>
    Mist,

    /// <summary>With a barrier varnish between the two.</summary>
    Barrier,

    /// <summary>Not at all.</summary>
    Never,
}

/// <summary>
/// A cell of the compatibility table: a new coat of one family over a coat of another. Where two rows speak of the same pair, the later
/// counts, so that a plugin or a file can change a row of the house.
/// </summary>
public sealed record CoatOver
{
    /// <summary>The family of the new coat, by its name.</summary>
    public required string Coat { get; init; }

    /// <summary>The row speaks of a very thin effect of that family (wash, filter, streak); of its coats otherwise.</summary>
    public bool AsEffect { get; init; }

    /// <summary>The family of the coat under it, by its name.</summary>
    public required string Over { get; init; }

    /// <summary>How it may go on a coat that is dry but has not cured.</summary>
    public required Bearing WhenDry { get; init; }

    /// <summary>The state the coat under it must have reached for that; sooner it is too young.</summary>
    public DryingState From { get; init; } = DryingState.Recoatable;

    /// <summary>How it may go on a coat that has cured.</summary>
    public required Bearing WhenCured { get; init; }

    /// <summary>What else a painter would say of the pair; empty for nothing.</summary>
    public string Note { get; init; } = "";

    /// <summary>Where the row comes from; <c>common practice</c> where nobody published it.</summary>
    public required string Source { get; init; }
}
