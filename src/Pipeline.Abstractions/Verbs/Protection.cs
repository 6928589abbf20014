namespace Pipeline.Abstractions;

/// <summary>What is done with what is left over.</summary>
public enum Waste
{
    /// <summary>Taken to the local collection point.</summary>
    Collected,

    /// <summary>Poured down the drain.</summary>
    Drain,
}

/// <summary>What is done with rags that have drying oil or enamel in them.</summary>
public enum Rags
{
    /// <summary>Spread flat to dry.</summary>
    Spread,

    /// <summary>Drowned in a closed metal tin of water.</summary>
    WaterTin,

    /// <summary>Thrown on a heap or into a bin.</summary>
    Heaped,
}

/// <summary>
/// What protects the painter, as far as the file says. Null is not said: no rule takes silence for a fault. It is no assessment of safety.
/// </summary>
public sealed record Protection
{
    /// <summary>The file says nothing.</summary>
    public static Protection Unsaid { get; } = new();

    /// <summary>Extraction to the outside.</summary>
    public bool? Extraction { get; init; }

    /// <summary>A respirator that fits, for what is in the air.</summary>
    public bool? Respirator { get; init; }

    /// <summary>Breathing air from a hose.</summary>
    public bool? AirFed { get; init; }

    /// <summary>Gloves that suit.</summary>
    public bool? Gloves { get; init; }

    /// <summary>An open window or another change of air.</summary>
    public bool? FreshAir { get; init; }

    /// <summary>A flame, heater or other source of ignition near by.</summary>
    public bool? Flame { get; init; }

    /// <summary>Where solvent and resin rinse go.</summary>
    public Waste? Waste { get; init; }

    /// <summary>Where oily rags go.</summary>
    public Rags? Rags { get; init; }

    /// <summary>What this says, and where it says nothing, what the other does.</summary>
    public Protection Over(Protection other) => new()
    {
        Extraction = Extraction ?? other.Extraction,
        Respirator = Respirator ?? other.Respirator,
        AirFed = AirFed ?? other.AirFed,
        Gloves = Gloves ?? other.Gloves,
        FreshAir = FreshAir ?? other.FreshAir,
        Flame = Flame ?? other.Flame,
        Waste = Waste ?? other.Waste,
        Rags = Rags ?? other.Rags,
    };
}
