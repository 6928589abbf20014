using NodaTime;

namespace Pipeline.Planning;

/// <summary>When one unit went, goes or will go through one step.</summary>
/// <param name="Route">Index of the route in the walked batch.</param>
/// <param name="Step">Index of the step in the route.</param>
/// <param name="Unit">The unit, from 0.</param>
/// <param name="Start">When work on the unit starts.</param>
/// <param name="Finish">When it is finished, with what runs by itself.</param>
/// <param name="IsDone">Whether that is so already: between two such times nothing can be changed, and nothing is judged.</param>
public sealed record KnownTime(int Route, int Step, int Unit, Instant Start, Instant Finish, bool IsDone = false);

/// <summary>Everything known about when units go through steps. What is not in it is not judged.</summary>
public sealed class KnownTimes
{
    private readonly Dictionary<(int Route, int Step), SortedDictionary<int, KnownTime>> times = [];

    /// <summary>Of several times for the same unit and step, the last counts.</summary>
    public KnownTimes(IEnumerable<KnownTime> times)
    {
        ArgumentNullException.ThrowIfNull(times);
        foreach (var time in times)
        {
            if (!this.times.TryGetValue((time.Route, time.Step), out var units))
                this.times[(time.Route, time.Step)] = units = [];
            units[time.Unit] = time;
        }
    }

    /// <summary>The known times of a step, by unit; empty if none is known.</summary>
    public IReadOnlyDictionary<int, KnownTime> Of(int route, int step) =>
        times.TryGetValue((route, step), out var units) ? units : [];

    /// <summary>True if anything is known of the step.</summary>
    public bool Knows(int route, int step) => times.ContainsKey((route, step));
}
