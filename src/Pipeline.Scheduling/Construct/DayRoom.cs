using System.Numerics;

namespace Pipeline.Scheduling;

/// <summary>The free ticks of each of a worker's open intervals, in a tree of greatest values: the next with enough is found at once.</summary>
internal sealed class DayRoom
{
    private readonly long[] most;
    private readonly int leaves;
    private readonly int count;

    public DayRoom(IReadOnlyList<Day> days)
    {
        count = days.Count;
        leaves = (int)BitOperations.RoundUpToPowerOf2((uint)Math.Max(1, count));
        most = new long[2 * leaves];
        Array.Fill(most, long.MinValue);
        for (var d = 0; d < count; d++)
            most[leaves + d] = days[d].Free;
        for (var i = leaves - 1; i >= 1; i--)
            most[i] = Math.Max(most[2 * i], most[(2 * i) + 1]);
    }

    /// <summary>Takes over a day's free ticks.</summary>
    public void Set(int day, long free)
    {
        var i = leaves + day;
        most[i] = free;
        for (i /= 2; i >= 1; i /= 2)
        {
            var greater = Math.Max(most[2 * i], most[(2 * i) + 1]);
            if (most[i] == greater)
                return;
            most[i] = greater;
        }
    }

    /// <summary>The first day from one on with so many free ticks; the number of days if there is none.</summary>
    public int Next(int day, long ticks)
    {
        if (day >= count)
            return count;
        var i = leaves + day;
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
