using System.Collections.Immutable;

namespace Pipeline.Scheduling;

/// <summary>What no schedule can keep, seen without a search. What is named here is sure; what is not may still be impossible.</summary>
public static class Contradictions
{
    /// <summary>Activities whose smallest run fits into no open interval or no day, and those that need more of a place than there is.</summary>
    /// <exception cref="ArgumentException">The problem is malformed.</exception>
    public static ImmutableArray<Obstacle> OfRoom(Problem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        WellFormed.Check(problem);
        return Feasibility.OfRoom(new Net(problem));
    }

    /// <summary>True if waits and open hours keep an activity from starting when it is pinned. False proves nothing.</summary>
    /// <exception cref="ArgumentException">The problem is malformed.</exception>
    public static bool IsTooEarly(Problem problem, int activity)
    {
        ArgumentNullException.ThrowIfNull(problem);
        WellFormed.Check(problem);
        var net = new Net(problem);
        if (net.LatestPinned(activity) is not { } latest)
            return false;
        // what is broken without the hours cannot be kept within them
        var components = new Components(net);
        var heads = Heads.Of(net, components, new Hours(net));
        return Enumerable.Range(net.Done[activity], net.Units[activity] - net.Done[activity])
            .Any(k => heads.Starts[net.Offset[activity] + k] > latest + ((k - net.Done[activity]) * net.Step[activity]));
    }

    /// <summary>The earliest start of each activity's own work, by unit, that waits and open hours allow; far away where the hours end before it.</summary>
    /// <exception cref="ArgumentException">The problem is malformed.</exception>
    public static ImmutableArray<ImmutableArray<long>> EarliestStarts(Problem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        WellFormed.Check(problem);
        var net = new Net(problem);
        var heads = Heads.Of(net, new Components(net), new Hours(net));
        return [.. Enumerable.Range(0, net.Count).Select(a => ImmutableArray.Create(heads.Starts, net.Offset[a], net.Units[a]))];
    }

    /// <summary>
    /// Rings of waits that ask for more time than they allow, whatever the open hours: one for each group of activities that waits tie together.
    /// </summary>
    /// <exception cref="ArgumentException">The problem is malformed.</exception>
    public static ImmutableArray<Obstacle.WaitsContradict> Rings(Problem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        WellFormed.Check(problem);
        var net = new Net(problem);
        return Heads.Rings(net, new Components(net));
    }

    /// <summary>
    /// Greatest waits that the open hours leave no room for, each group of activities that waits tie together taken by itself. Sure as long as
    /// the hours given go on for longer than the greatest waits of a group together, with every opening that recurs at least once before that.
    /// </summary>
    /// <param name="problem">A problem without rings of its own.</param>
    /// <param name="leeway">Ticks by which a greatest wait may be exceeded before this speaks.</param>
    /// <returns>One for each group, the wait without which there would be room.</returns>
    /// <exception cref="ArgumentException">The problem is malformed.</exception>
    public static ImmutableArray<Obstacle.GreatestWaitTooShort> OfHours(Problem problem, long leeway)
    {
        ArgumentNullException.ThrowIfNull(problem);
        WellFormed.Check(problem);
        var net = new Net(problem);
        var components = new Components(net);
        var hours = new Hours(net);
        var within = Enumerable.Range(0, problem.Waits.Length)
            .Where(w => components.Of[problem.Waits[w].From] == components.Of[problem.Waits[w].To])
            .ToLookup(w => components.Of[problem.Waits[w].From]);
        var found = ImmutableArray.CreateBuilder<Obstacle.GreatestWaitTooShort>();
        for (var g = 0; g < components.Groups.Length; g++)
        {
            var members = components.Groups[g];
            if (!components.IsTied[g] || members.Any(a => net.Attended[a] && hours.SmallestRun(a) > hours.Longest(a)))
                continue;
            var inside = within[g].ToList();
            if (!IsOut(problem, members, inside, leeway))
                continue;
            var greatest = inside.Where(w => problem.Waits[w].Greatest is not null).OrderBy(w => problem.Waits[w].Greatest).ToList();
            // a least wait below zero ties activities together as well
            if (greatest.Count == 0)
                continue;
            found.Add(new Obstacle.GreatestWaitTooShort(greatest.Where(w => !IsOut(problem, members, [.. inside.Where(other => other != w)], leeway)).Append(greatest[0]).First()));
        }

        return found.ToImmutable();
    }

    // True if these activities under these waits climb beyond all open hours.
    private static bool IsOut(Problem problem, int[] members, IReadOnlyList<int> waits, long leeway)
    {
        var alone = problem with
        {
            Activities = [.. members.Select(a => problem.Activities[a] with { PinnedStart = null })],
            Waits =
            [
                .. waits.Select(w => problem.Waits[w]).Select(wait => wait with
                {
                    From = Array.IndexOf(members, wait.From),
                    To = Array.IndexOf(members, wait.To),
                    Greatest = wait.Greatest + leeway,
                }),
            ],
            Dues = [],
        };
        var net = new Net(alone);
        return Heads.Of(net, new Components(net), new Hours(net)).Starts.Any(start => start >= Hours.Never);
    }
}
