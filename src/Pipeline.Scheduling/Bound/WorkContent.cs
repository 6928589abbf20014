namespace Pipeline.Scheduling;

/// <summary>
/// Whether all attended work can be done in time if it could be broken off and taken up again at will: each piece between its
/// earliest and latest time, on the clock of those at hand, earliest deadline first. If not even that is possible, no schedule is.
/// </summary>
internal sealed class WorkContent
{
    private readonly Net net;
    private readonly HandTime clock;
    private readonly int[] activities;
    private readonly long[] heads;
    private readonly long[] leastRuns;
    private readonly List<(int[] Users, long Ticks)> tours = [];

    /// <summary>All work that only the given workers may do, against their hours.</summary>
    public WorkContent(Net net, Components components, long[] heads, IReadOnlyCollection<int> workers)
    {
        this.net = net;
        this.heads = heads;
        clock = new HandTime(net, workers);
        activities = [.. Enumerable.Range(0, net.Count).Where(a => net.Attended[a] && net.Done[a] < net.Units[a] && net.Workers[a].All(workers.Contains))];
        leastRuns = LeastRuns.Of(net);
        var longest = Sessions.Longest(net, workers);
        for (var t = 0; t < net.Problem.Tools.Length; t++)
        {
            // A tool that already holds something, or that others use too, may save its first filling; that case is left out.
            var users = activities.Where(a => net.Tool[a] == t).ToArray();
            if (users.Length == 0 || Enumerable.Range(0, net.Count).Any(a => net.Tool[a] == t && (net.Done[a] > 0 || !users.Contains(a))))
                continue;
            var tool = net.Problem.Tools[t];
            int[] loads = [.. users.Select(a => net.Load[a]).Distinct().Order()];
            if (tool.Count > 1)
            {
                tours.Add((users, ToolTour.Entries(tool, loads)));
                continue;
            }

            var work = users.Sum(a => net[a].SetUp + net.Work(a, net.Units[a]) + net[a].PutAway);
            var room = Math.Max(1, longest - loads.Min(l => tool.CloseDown[l]));
            var sessions = (int)Math.Clamp((work + room - 1) / room, 1, 10_000);
            sessions = Math.Max(sessions, Sessions.Least(net, components, t, room));
            tours.Add((users, ToolTour.Least(tool, loads, sessions)));
        }
    }

    public bool IsEmpty => activities.Length == 0;

    /// <summary>Whether the work fits, given the latest own start of every unit.</summary>
    public bool Fits(long[] latest)
    {
        var pieces = new List<(long Release, long Deadline, long Ticks)>();
        foreach (var a in activities)
        {
            var first = net.Offset[a] + net.Done[a];
            var last = net.Offset[a + 1] - 1;
            if (net[a].SetUp > 0)
                pieces.Add((clock.From(heads[first] - net[a].SetUp), clock.By(latest[first]), net[a].SetUp));
            if (net[a].Together)
                pieces.Add((clock.From(heads[first]), clock.By(latest[first] + net[a].PerUnit), net[a].PerUnit));
            else if (net[a].PerUnit > 0)
            {
                for (var u = first; u <= last; u++)
                    pieces.Add((clock.From(heads[u]), clock.By(latest[u] + net[a].PerUnit), net[a].PerUnit));
            }

            var parted = leastRuns[a] - 1;
            // one pair of hands has put away before the last run; of several, one may still be at it after the last
            var putAwayEnd = clock.By(latest[last] + net[a].PerUnit + net[a].PutAway);
            if (parted > 0 && net[a].SetUp > 0)
                pieces.Add((clock.From(heads[first]), clock.By(latest[last]), parted * net[a].SetUp));
            if (parted > 0 && net[a].PutAway > 0)
                pieces.Add((clock.From(heads[first]), net.Workers[a].Length == 1 ? clock.By(latest[last]) : putAwayEnd, parted * net[a].PutAway));
            if (net[a].PutAway > 0)
                pieces.Add((clock.From(heads[last] + net[a].PerUnit), putAwayEnd, net[a].PutAway));
        }

        foreach (var (users, ticks) in tours)
        {
            if (ticks > 0)
                pieces.Add((0, users.Max(a => clock.By(latest[net.Offset[a + 1] - 1])), ticks));
        }

        return FitsInTurn(pieces);
    }

    private static bool FitsInTurn(List<(long Release, long Deadline, long Ticks)> pieces)
    {
        pieces.Sort();
        var waiting = new PriorityQueue<long, long>();
        var next = 0;
        long now = 0;
        while (next < pieces.Count || waiting.Count > 0)
        {
            if (waiting.Count == 0)
                now = Math.Max(now, pieces[next].Release);
            for (; next < pieces.Count && pieces[next].Release <= now; next++)
                waiting.Enqueue(pieces[next].Ticks, pieces[next].Deadline);
            waiting.TryDequeue(out var ticks, out var deadline);
            var until = next < pieces.Count ? Math.Min(now + ticks, pieces[next].Release) : now + ticks;
            if (until > deadline)
                return false;
            if (until < now + ticks)
                waiting.Enqueue(now + ticks - until, deadline);
            now = until;
        }

        return true;
    }
}
