namespace Pipeline.Abstractions;

/// <summary>What a figure of a rule counts.</summary>
public enum FigureUnit
{
    /// <summary>Minutes on the paint's own clock.</summary>
    Minutes,

    /// <summary>Degrees Celsius between two temperatures.</summary>
    Degrees,

    /// <summary>Hundredths.</summary>
    Percent,

    /// <summary>Things: coats, drops.</summary>
    Count,
}

/// <summary>A row of the table of figures: a number that a rule or verb goes by and no other table holds. Of two rows of one name the later counts.</summary>
public sealed record Figure
{
    /// <summary>What it is called: <c>warming up</c>.</summary>
    public required string Name { get; init; }

    /// <summary>The number, zero or more, in its unit.</summary>
    public required double Value { get; init; }

    /// <summary>The unit.</summary>
    public required FigureUnit Unit { get; init; }

    /// <summary>What it means, as the end of a sentence.</summary>
    public required string Means { get; init; }

    /// <summary>Where the row comes from; <c>common practice</c> where nobody published it.</summary>
    public required string Source { get; init; }

    /// <summary>As a person writes it: <c>2 h</c>, <c>3 °C</c>, <c>20 %</c>, <c>5</c>.</summary>
    public string Spoken => Unit switch
    {
        FigureUnit.Minutes => new Drying(Value).ToString(),
        FigureUnit.Degrees => FormattableString.Invariant($"{Value:0.#} °C"),
        FigureUnit.Percent => FormattableString.Invariant($"{Value:0.#} %"),
        _ => FormattableString.Invariant($"{Value:0.#}"),
    };
}
