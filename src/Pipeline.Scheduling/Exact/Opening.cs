namespace Pipeline.Scheduling;

/// <summary>One open interval of one worker.</summary>
/// <param name="Worker">Whose.</param>
/// <param name="Sitting">Index among the worker's.</param>
/// <param name="Open">When.</param>
/// <param name="Rank">Where it comes among those of all workers in the order in which they end; those that end at once share a rank.</param>
internal readonly record struct Opening(int Worker, int Sitting, Interval Open, int Rank)
{
    /// <summary>All there are, per worker and in order of time.</summary>
    public static Opening[][] Of(Net net)
    {
        var ends = net.Open.SelectMany(open => open).Select(o => o.End).Distinct().Order().ToArray();
        return [.. net.Open.Select((open, w) => open.Select((o, d) => new Opening(w, d, o, Array.BinarySearch(ends, o.End))).ToArray())];
    }

    /// <summary>Whether both workers are at hand at some time.</summary>
    public bool Overlaps(in Opening other) => Open.Start < other.Open.End && other.Open.Start < Open.End;
}
