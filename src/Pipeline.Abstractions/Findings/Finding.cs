namespace Pipeline.Abstractions;

/// <summary>A place in a file. Lines and columns count from 1.</summary>
/// <param name="File">The file's name as the painter gave it.</param>
/// <param name="Line">From 1.</param>
/// <param name="Column">From 1.</param>
public sealed record Place(string File, int Line, int Column) : IComparable<Place>
{
    /// <summary>By file, line, column.</summary>
    public int CompareTo(Place? other)
    {
        if (other is null)
            return 1;
        var byFile = string.CompareOrdinal(File, other.File);
        if (byFile != 0)
            return byFile;
        return Line != other.Line ? Line.CompareTo(other.Line) : Column.CompareTo(other.Column);
    }

    /// <summary>The GNU form <c>file:line:column</c>.</summary>
    public override string ToString() => FormattableString.Invariant($"{File}:{Line}:{Column}");
}

/// <summary>How grave a finding is; the levels of SARIF 2.1.0 §3.27.10.</summary>
public enum Level
{
    /// <summary>Good to know.</summary>
    Note,

    /// <summary>Risky: the result may suffer.</summary>
    Warning,

    /// <summary>Likely ruin, unsafe or impossible.</summary>
    Error,
}

/// <summary>Another place that helps to understand a finding.</summary>
public sealed record Related(Place Place, string Message);

/// <summary>What a rule, or the reading of a file, has to say about a place in the file.</summary>
public sealed record Finding
{
    /// <summary>The rule's name in kebab case; null for a mistake in reading the file, which no one can silence.</summary>
    public string? Rule { get; init; }

    /// <summary>How grave it is.</summary>
    public required Level Level { get; init; }

    /// <summary>Where the change is to be made.</summary>
    public required Place Place { get; init; }

    /// <summary>What is wrong, with the values, in a painter's words.</summary>
    public required string Message { get; init; }

    /// <summary>What to do about it.</summary>
    public string? Remedy { get; init; }

    /// <summary>The model concerned, or null.</summary>
    public string? Model { get; init; }

    /// <summary>The areas concerned.</summary>
    public Sequence<string> Areas { get; init; }

    /// <summary>Places that help to understand it.</summary>
    public Sequence<Related> Related { get; init; }

    /// <summary>The reason the painter gave for silencing it; null when it speaks.</summary>
    public string? Silenced { get; init; }

    /// <summary>True if it is told only where its step misses no wait.</summary>
    public bool GivesWay { get; init; }

    /// <summary>The change that would put it right, where there is one thing to do and it is sure; null otherwise.</summary>
    public Mend? Mend { get; init; }

    /// <summary>
    /// <see cref="Mend"/> as changes to the text of one file, in the order of their places, none reaching into another. Empty if there is
    /// none, if nobody asked for them, or if the text there cannot be changed faithfully.
    /// </summary>
    public Sequence<Edit> Edits { get; init; }
}
