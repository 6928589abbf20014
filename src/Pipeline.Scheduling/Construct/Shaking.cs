namespace Pipeline.Scheduling;

/// <summary>Shifts keys at random, by the group and a seed alone: the same group is shifted alike whenever it is asked about.</summary>
/// <param name="Most">By how many ticks at most.</param>
/// <param name="Seed">Another seed shifts otherwise.</param>
internal readonly record struct Shaking(double Most, int Seed)
{
    public static readonly Shaking None = new(0, 0);

    /// <summary>By how many ticks a group's key is shifted.</summary>
    public double Of(int group) => Most == 0 ? 0 : Most * Mixed(group) / uint.MaxValue;

    // Multiply and shift until every bit of the two depends on every other.
    private uint Mixed(int group)
    {
        var x = unchecked(((uint)Seed * 0x9E3779B1) ^ ((uint)group * 0x85EBCA6B));
        x ^= x >> 16;
        x = unchecked(x * 0x7FEB352D);
        x ^= x >> 15;
        x = unchecked(x * 0x846CA68B);
        return x ^ (x >> 16);
    }
}
