namespace Pipeline.Scheduling;

/// <summary>Makes new lists from old ones; what has to come before stays before.</summary>
internal sealed class Crossing
{
    // Of neighbours in a list, so many are exchanged.
    private const double Exchanged = 0.05;

    private readonly TaskOrder order;
    private readonly Random random;
    private readonly double[] content;
    private readonly long[] duration;

    public Crossing(Tasks tasks, TaskOrder order, Random random)
    {
        this.order = order;
        this.random = random;
        duration = tasks.Duration;
        content = new double[tasks.Count];
        for (var i = 0; i < tasks.Count; i++)
        {
            for (var r = 0; r < tasks.Capacity.Length; r++)
                content[i] += tasks.Capacity[r] == 0 ? 0 : (double)tasks.Demand[i][r] * tasks.Duration[i] / tasks.Capacity[r];
        }
    }

    /// <summary>A stretch of the mother's list in which her places are well filled; before and after it the father's order.</summary>
    public int[] Cross(Member mother, Member father)
    {
        var n = mother.List.Length;
        var length = Math.Max(1, (n / 4) + random.Next(Math.Max(1, n / 3)));
        var from = random.Next(Math.Max(1, n - length + 1));
        var other = random.Next(Math.Max(1, n - length + 1));
        if (Filled(mother, other, length) > Filled(mother, from, length))
            from = other;
        var child = new int[n];
        var taken = new bool[n];
        var p = 0;
        for (var i = 0; i < from; i++)
            taken[mother.List[i]] = true;
        foreach (var i in father.List)
        {
            if (taken[i])
                child[p++] = i;
        }

        for (var i = from; i < Math.Min(n, from + length); i++)
            (child[p++], taken[mother.List[i]]) = (mother.List[i], true);
        foreach (var i in father.List)
        {
            if (!taken[i])
                child[p++] = i;
        }

        return child;
    }

    /// <summary>Exchanges some neighbours.</summary>
    public void Mutate(int[] list)
    {
        for (var p = 0; p + 1 < list.Length; p++)
        {
            if (random.NextDouble() < Exchanged && !order.IsBefore(list[p], list[p + 1]))
                (list[p], list[p + 1]) = (list[p + 1], list[p]);
        }
    }

    private double Filled(Member member, int from, int length)
    {
        double sum = 0;
        var first = long.MaxValue;
        long last = 0;
        for (var p = from; p < Math.Min(member.List.Length, from + length); p++)
        {
            var i = member.List[p];
            first = Math.Min(first, member.Starts[i]);
            last = Math.Max(last, member.Starts[i] + duration[i]);
            sum += content[i];
        }

        return sum / Math.Max(1, last - first);
    }
}
