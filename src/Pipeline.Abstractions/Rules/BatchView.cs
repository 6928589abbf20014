namespace Pipeline.Abstractions;

/// <summary>The whole batch as a rule sees it.</summary>
public sealed record BatchView
{
    /// <summary>Every walk, in file order.</summary>
    public required Sequence<WalkedSteps> Routes { get; init; }

    /// <summary>Starts the painter has decided.</summary>
    public Sequence<DecidedStart> Starts { get; init; }

    /// <summary>Paints and mixes, in file order.</summary>
    public Sequence<Paint> Paints { get; init; }

    /// <summary>The trade's tables as they hold for the batch.</summary>
    public Tables Tables { get; init; } = Tables.Empty;

    /// <summary>The bench's climate.</summary>
    public BenchClimate Climate { get; init; } = BenchClimate.Standard;

    /// <summary>Where the file says the bench.</summary>
    public required Place Bench { get; init; }

    /// <summary>How many people sit there, at least one.</summary>
    public int Painters { get; init; } = 1;

    /// <summary>Tools with their number, by bench name; a tool that is not listed is there as often as needed.</summary>
    public Sequence<ToolCount> Tools { get; init; }

    /// <summary>What the spraying tool's cup holds, or null if the file does not say.</summary>
    public Volume? Cup { get; init; }
}

/// <summary>How many there are of a tool.</summary>
public sealed record ToolCount(string Tool, int Count);

/// <summary>A step of one of the routes.</summary>
/// <param name="Route">Position in <see cref="BatchView.Routes"/>.</param>
/// <param name="Step">Index in that route.</param>
public readonly record struct StepInBatch(int Route, int Step);

/// <summary>A step whose start the painter has decided.</summary>
/// <param name="At">The step.</param>
/// <param name="Start">In the bench's own time.</param>
public sealed record DecidedStart(StepInBatch At, DateTime Start);

/// <summary>What a rule has to say about the batch as a whole.</summary>
public sealed record BatchVerdict
{
    /// <summary>How grave.</summary>
    public required Level Level { get; init; }

    /// <summary>Where the change is to be made.</summary>
    public required Place Place { get; init; }

    /// <summary>The step to change, so that it can be silenced there or at its model; null if the place is no step.</summary>
    public StepInBatch? Step { get; init; }

    /// <summary>The areas concerned.</summary>
    public Sequence<string> Areas { get; init; }

    /// <summary>What is wrong, in a painter's words, with values.</summary>
    public required string Message { get; init; }

    /// <summary>What to do.</summary>
    public required string Remedy { get; init; }

    /// <summary>Places that help to understand it.</summary>
    public Sequence<Related> Related { get; init; }

    /// <summary>The change that puts it right, where there is one thing to do and it is sure; null otherwise.</summary>
    public Mend? Mend { get; init; }
}
