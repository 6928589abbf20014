namespace Pipeline.Scheduling;

/// <summary>
/// Which task can never start after which. Lists of tasks keep this order; ties in time are settled by it too.
/// </summary>
internal sealed class TaskOrder
{
    private readonly Tasks tasks;
    private readonly int[][] after;
    private readonly int[] before;
    private readonly long[] wayToEnd;

    /// <summary>The order in a project that can be listed by its arcs, or by the longest ways between starts where these are given.</summary>
    public TaskOrder(Tasks tasks, LongestWays? ways = null)
    {
        this.tasks = tasks;
        after = [.. Enumerable.Range(0, tasks.Count).Select(i => ways is null
            ? tasks.Net.Out[i].Select(arc => arc.To).Distinct().ToArray()
            : Enumerable.Range(0, tasks.Count).Where(j => ways.IsBefore(i, j)).ToArray())];
        before = new int[tasks.Count];
        foreach (var next in after.SelectMany(a => a))
            before[next]++;
        ByRank = Ranked();
        wayToEnd = new long[tasks.Count];
        for (var r = tasks.Count - 1; r >= 0; r--)
        {
            var i = ByRank[r];
            wayToEnd[i] = ways?.ToEnd(i) ?? tasks.Net.Out[i].Select(arc => arc.Lag + wayToEnd[arc.To]).Append(tasks.Duration[i]).Max();
        }
    }

    /// <summary>All tasks, none before one that it has to follow.</summary>
    public int[] ByRank { get; }

    /// <summary>Whether <paramref name="one"/> is known to come before <paramref name="other"/>.</summary>
    public bool IsBefore(int one, int other) => Array.IndexOf(after[one], other) >= 0;

    /// <summary>A list drawn at random, those with the longest way to the end more likely to be early.</summary>
    public int[] Sample(Random random)
    {
        var missing = (int[])before.Clone();
        var ready = Enumerable.Range(0, tasks.Count).Where(i => missing[i] == 0).ToList();
        var list = new int[tasks.Count];
        for (var p = 0; p < list.Length; p++)
        {
            var pick = Draw(ready, random);
            list[p] = ready[pick];
            ready.RemoveAt(pick);
            foreach (var next in after[list[p]])
            {
                if (--missing[next] == 0)
                    ready.Add(next);
            }
        }

        return list;
    }

    private int Draw(List<int> ready, Random random)
    {
        var least = ready.Min(i => wayToEnd[i]);
        var draw = random.NextDouble() * ready.Sum(i => Weight(i, least));
        for (var k = 0; k < ready.Count - 1; k++)
        {
            draw -= Weight(ready[k], least);
            if (draw <= 0)
                return k;
        }

        return ready.Count - 1;
    }

    private double Weight(int task, long least) => (double)(wayToEnd[task] - least + 1) * (wayToEnd[task] - least + 1);

    private int[] Ranked()
    {
        var missing = (int[])before.Clone();
        var ready = new Queue<int>(Enumerable.Range(0, tasks.Count).Where(i => missing[i] == 0));
        var ranked = new List<int>();
        while (ready.TryDequeue(out var i))
        {
            ranked.Add(i);
            foreach (var next in after[i])
            {
                if (--missing[next] == 0)
                    ready.Enqueue(next);
            }
        }

        return [.. ranked];
    }
}
