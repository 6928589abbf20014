namespace Pipeline.Scheduling;

/// <summary>
/// A genetic search over lists of tasks. Every child is scheduled forwards, pushed to the right from its finish and pulled to
/// the left again, which irons out what a list alone leaves ragged.
/// </summary>
internal sealed class Breeding
{
    private const int Herd = 60;

    private readonly Tasks tasks;
    private readonly ListSchedule schedule;
    private readonly Random random;
    private readonly List<Member> herd = [];
    private readonly long[] scratch;
    private readonly int[] order;
    private readonly long[] keys;
    private readonly int[] ranks;
    private long bornSinceBetter;

    public Breeding(Tasks tasks, int seed)
    {
        this.tasks = tasks;
        schedule = new ListSchedule(tasks);
        random = new Random(seed);
        scratch = new long[tasks.Count];
        order = new int[tasks.Count];
        keys = new long[tasks.Count];
        ranks = Ranks();
    }

    public Member? Best { get; private set; }

    /// <summary>Schedules made.</summary>
    public long Work => schedule.Work;

    /// <summary>A list of tasks and when they start.</summary>
    internal sealed record Member(int[] List, long[] Starts, long Finish);

    /// <summary>Goes on until so many schedules more have been made, or the finish meets the bound.</summary>
    public void Run(long schedules, long bound, CancellationToken cancel)
    {
        var until = schedule.Work + schedules;
        while (schedule.Work < until && (Best is null || Best.Finish > bound) && !cancel.IsCancellationRequested)
        {
            if (herd.Count < Herd)
                Join(Raise(Sample()));
            else if (bornSinceBetter > 150 * Herd)
                StartAfresh();
            else
                Breed();
        }
    }

    /// <summary>Takes somebody else's schedule into the herd.</summary>
    public void Welcome(long[] starts) => Join(new Member(ByStart(starts), starts, tasks.Finish(starts)));

    private void StartAfresh()
    {
        bornSinceBetter = 0;
        herd.Clear();
        if (random.Next(2) == 0)
            herd.Add(Best!);
    }

    private void Breed()
    {
        var mother = Pick();
        var father = Pick();
        var child = Cross(mother, father);
        Mutate(child);
        Join(Raise(child));
    }

    private Member Pick()
    {
        var x = herd[random.Next(herd.Count)];
        var y = herd[random.Next(herd.Count)];
        return x.Finish <= y.Finish ? x : y;
    }

    // A stretch of the mother's list, where her places are best filled; around it the father's order.
    private int[] Cross(Member mother, Member father)
    {
        var n = tasks.Count;
        var length = Math.Max(1, (n / 4) + random.Next(Math.Max(1, n / 3)));
        var from = random.Next(Math.Max(1, n - length + 1));
        var other = random.Next(Math.Max(1, n - length + 1));
        if (Density(mother, other, length) > Density(mother, from, length))
            from = other;
        var child = new int[n];
        var taken = new bool[n];
        var p = 0;
        // all that must come before the stretch in the mother comes first, in the father's order
        var isEarly = new bool[n];
        for (var i = 0; i < from; i++)
            isEarly[mother.List[i]] = true;
        foreach (var i in father.List)
        {
            if (isEarly[i])
                (child[p++], taken[i]) = (i, true);
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

    private double Density(Member member, int from, int length)
    {
        double content = 0;
        var first = long.MaxValue;
        long last = 0;
        for (var p = from; p < Math.Min(tasks.Count, from + length); p++)
        {
            var i = member.List[p];
            first = Math.Min(first, member.Starts[i]);
            last = Math.Max(last, member.Starts[i] + tasks.Duration[i]);
            for (var r = 0; r < tasks.Capacity.Length; r++)
                content += tasks.Capacity[r] == 0 ? 0 : (double)tasks.Demand[i][r] * tasks.Duration[i] / tasks.Capacity[r];
        }

        return content / Math.Max(1, last - first);
    }

    private void Mutate(int[] list)
    {
        for (var p = 0; p + 1 < list.Length; p++)
        {
            if (random.NextDouble() < 0.05 && !tasks.Arcs.Any(arc => arc.From == list[p] && arc.To == list[p + 1]))
                (list[p], list[p + 1]) = (list[p + 1], list[p]);
        }
    }

    private Member Raise(int[] list)
    {
        schedule.Forward(list, scratch);
        // to the right: those that finish last go first
        for (var i = 0; i < tasks.Count; i++)
            keys[i] = -(scratch[i] + tasks.Duration[i]);
        Sort(backwards: true);
        var backwards = (int[])order.Clone();
        var length = schedule.Backward(backwards, scratch);
        // and back to the left, in the order in which they now start
        for (var i = 0; i < tasks.Count; i++)
            keys[i] = length - scratch[i] - tasks.Duration[i];
        Sort(backwards: false);
        var starts = new long[tasks.Count];
        var forwards = (int[])order.Clone();
        var finish = schedule.Forward(forwards, starts);
        return new Member(ByStart(starts), starts, finish);
    }

    private int[] ByStart(long[] starts)
    {
        Array.Copy(starts, keys, starts.Length);
        Sort(backwards: false);
        return (int[])order.Clone();
    }

    // By key, tasks of no length before or after those they are tied to.
    private void Sort(bool backwards)
    {
        for (var i = 0; i < order.Length; i++)
            order[i] = i;
        var sorted = (long[])keys.Clone();
        Array.Sort(order, (x, y) => sorted[x] != sorted[y] ? sorted[x].CompareTo(sorted[y]) : backwards ? ranks[y].CompareTo(ranks[x]) : ranks[x].CompareTo(ranks[y]));
    }

    private int[] Ranks()
    {
        var missing = new int[tasks.Count];
        foreach (var arc in tasks.Arcs)
            missing[arc.To]++;
        var rank = new int[tasks.Count];
        var ready = new Queue<int>(Enumerable.Range(0, tasks.Count).Where(i => missing[i] == 0));
        for (var next = 0; ready.TryDequeue(out var i); next++)
        {
            rank[i] = next;
            foreach (var arc in tasks.Net.Out[i])
            {
                if (--missing[arc.To] == 0)
                    ready.Enqueue(arc.To);
            }
        }

        return rank;
    }

    private void Join(Member member)
    {
        bornSinceBetter++;
        if (Best is null || member.Finish < Best.Finish)
        {
            Best = member;
            bornSinceBetter = 0;
        }

        if (herd.Count < Herd)
        {
            herd.Add(member);
            return;
        }

        // the worst of a few makes room, if it is no better
        var worst = random.Next(herd.Count);
        for (var i = 0; i < 4; i++)
        {
            var other = random.Next(herd.Count);
            if (herd[other].Finish > herd[worst].Finish)
                worst = other;
        }

        if (member.Finish <= herd[worst].Finish && !herd.Any(m => m.Finish == member.Finish && m.Starts.AsSpan().SequenceEqual(member.Starts)))
            herd[worst] = member;
    }

    // A list drawn at random, those with the longest way to the end more likely.
    private int[] Sample()
    {
        var tails = Tails();
        var missing = new int[tasks.Count];
        foreach (var arc in tasks.Arcs)
            missing[arc.To]++;
        var ready = Enumerable.Range(0, tasks.Count).Where(i => missing[i] == 0).ToList();
        var list = new int[tasks.Count];
        for (var p = 0; p < list.Length; p++)
        {
            var least = ready.Min(i => tails[i]);
            var sum = ready.Sum(i => Math.Pow(tails[i] - least + 1, 2));
            var draw = random.NextDouble() * sum;
            var pick = ready.Count - 1;
            for (var k = 0; k < ready.Count; k++)
            {
                draw -= Math.Pow(tails[ready[k]] - least + 1, 2);
                if (draw > 0)
                    continue;
                pick = k;
                break;
            }

            list[p] = ready[pick];
            ready.RemoveAt(pick);
            foreach (var arc in tasks.Net.Out[list[p]])
            {
                if (--missing[arc.To] == 0)
                    ready.Add(arc.To);
            }
        }

        return list;
    }

    private long[]? wayToEnd;

    private long[] Tails()
    {
        if (wayToEnd is not null)
            return wayToEnd;
        wayToEnd = new long[tasks.Count];
        foreach (var i in Enumerable.Range(0, tasks.Count).OrderByDescending(i => ranks[i]))
        {
            wayToEnd[i] = tasks.Duration[i];
            foreach (var arc in tasks.Net.Out[i])
                wayToEnd[i] = Math.Max(wayToEnd[i], arc.Lag + wayToEnd[arc.To]);
        }

        return wayToEnd;
    }
}
