namespace Pipeline.Abstractions;

/// <summary>A row of the table of thinners: what a thinner is made of, and the paint it curdles.</summary>
public sealed record Thinner
{
    /// <summary>Its trade name, or a word that names of its kind hold: <c>white spirit</c>, <c>lacquer</c>.</summary>
    public required string Name { get; init; }

    /// <summary>What it carries.</summary>
    public required Carrier Carrier { get; init; }

    /// <summary>The kinds of paint it curdles, by what they carry.</summary>
    public Sequence<Carrier> Curdles { get; init; }

    /// <summary>Where the row comes from; <c>common practice</c> where nobody published it.</summary>
    public required string Source { get; init; }
}
