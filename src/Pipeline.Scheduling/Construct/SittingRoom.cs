using System.Numerics;

namespace Pipeline.Scheduling;

/// <summary>The free ticks of each of a worker's open intervals, in a tree of greatest values: the next with enough is found at once.</summary>
internal sealed class SittingRoom
{
    private readonly IReadOnlyList<Sitting> sittings;
    private readonly long[] most;
    private readonly int leaves;
    private readonly int count;

    public SittingRoom(IReadOnlyList<Sitting> sittings)
    {
        this.sittings = sittings;
        count = sittings.Count;
        leaves = (int)BitOperations.RoundUpToPowerOf2((uint)Math.Max(1, count));
        most = new long[2 * leaves];
        Array.Fill(most, long.MinValue);
        for (var d = 0; d < count; d++)
            most[leaves + d] = sittings[d].Free;
        for (var i = leaves - 1; i >= 1; i--)
            most[i] = Math.Max(most[2 * i], most[(2 * i) + 1]);
    }

    /// <summary>Takes over the free ticks of all intervals of a day.</summary>
    public void Changed(Workday day)
    {
        for (var d = day.First; d <= day.Last; d++)
            Set(d, sittings[d].Free);
    }

    private void Set(int sitting, long free)
    {
        var i = leaves + sitting;
        most[i] = free;
        for (i /= 2; i >= 1; i /= 2)
        {
            var greater = Math.Max(most[2 * i], most[(2 * i) + 1]);
            if (most[i] == greater)
                return;
            most[i] = greater;
        }
    }

    /// <summary>The first interval from one on with so many free ticks; their number if there is none.</summary>
    public int Next(int sitting, long ticks)
    {
        if (sitting >= count)
            return count;
        var i = leaves + sitting;
        // up until something to the right is great enough, and down to the first of it
        while (most[i] < ticks)
        {
            while ((i & 1) == 1)
                i /= 2;
            if (i == 0)
                return count;
            i++;
        }

        while (i < leaves)
            i = most[2 * i] >= ticks ? 2 * i : (2 * i) + 1;
        return Math.Min(i - leaves, count);
    }
}
