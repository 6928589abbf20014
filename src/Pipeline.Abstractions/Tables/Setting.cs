namespace Pipeline.Abstractions;

/// <summary>A row of the table of setting times: how long a glue, a filler or a wet piece takes. Of two rows of one name the later counts.</summary>
public sealed record Setting
{
    /// <summary>What sets, as a person says it: <c>PVA</c>, <c>epoxy putty</c>, <c>washed piece</c>.</summary>
    public required string Name { get; init; }

    /// <summary>How long until it can be worked on, at 20–23 °C and 45–55 % relative humidity.</summary>
    public required DryingRange Sets { get; init; }

    /// <summary>How long until it can be sanded, where that is longer; null if it is the same.</summary>
    public DryingRange? Sandable { get; init; }

    /// <summary>How climate changes the times.</summary>
    public Carrier Carrier { get; init; }

    /// <summary>Where the row comes from; <c>common practice</c> where nobody published it.</summary>
    public required string Source { get; init; }

    /// <summary>True if the file, not the trade, gives the times.</summary>
    public bool IsFromFile => Source == Tables.TheFile;
}
