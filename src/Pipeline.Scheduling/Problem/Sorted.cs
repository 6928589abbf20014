namespace Pipeline.Scheduling;

/// <summary>Looks things up that stand in order of a time.</summary>
internal static class Sorted
{
    /// <summary>Index of the first whose time is later than the one given; as many as there are if none is.</summary>
    /// <param name="items">In order of their times.</param>
    /// <param name="time">What the time is compared with.</param>
    /// <param name="timeOf">The time of one.</param>
    /// <param name="low">None before this index is.</param>
    public static int FirstLater<T>(ReadOnlySpan<T> items, long time, Func<T, long> timeOf, int low = 0)
    {
        var high = items.Length;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (timeOf(items[middle]) <= time)
                low = middle + 1;
            else
                high = middle;
        }

        return low;
    }
}
