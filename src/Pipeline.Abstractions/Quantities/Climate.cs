namespace Pipeline.Abstractions;

/// <summary>The air over the bench.</summary>
/// <param name="Air">Temperature of the air.</param>
/// <param name="Humidity">Relative humidity.</param>
/// <param name="Surface">Temperature of the pieces where it is known to differ from the air; null if it does not.</param>
public sealed record Climate(Temperature Air, Share Humidity, Temperature? Surface = null)
{
    /// <summary>21 °C and 50 %, inside the band for which the trade gives its drying times.</summary>
    public static Climate Standard { get; } = new(new Temperature(21), new Share(0.5));
}

/// <summary>Where something comes from that is used at the bench.</summary>
/// <param name="At">How warm it is there.</param>
/// <param name="InTheRoomFor">How long before its first use it is brought to the bench; null if the file does not say.</param>
public sealed record Storage(Temperature At, Drying? InTheRoomFor = null);

/// <summary>The bench's climate while somebody works there and while it is left alone overnight.</summary>
public sealed record BenchClimate(Climate Day, Climate Night)
{
    /// <summary>The standard climate day and night.</summary>
    public static BenchClimate Standard { get; } = new(Climate.Standard, Climate.Standard);
}
