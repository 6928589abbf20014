using System.Collections.Immutable;

namespace Pipeline.Scheduling;

/// <summary>What can be seen to be impossible without searching.</summary>
internal static class Feasibility
{
    public static ImmutableArray<Obstacle> Of(Net net)
    {
        var obstacles = ImmutableArray.CreateBuilder<Obstacle>();
        var hours = new Hours(net);
        for (var a = 0; a < net.Count; a++)
        {
            if (net.Done[a] == net.Units[a])
                continue;
            if (net.Attended[a] && hours.SmallestRun(a) > hours.Longest(a))
                obstacles.Add(new Obstacle.FitsNoInterval(a, hours.SmallestRun(a), hours.Longest(a)));
            if (net.PinnedStart[a] < net[a].NotBefore)
                obstacles.Add(new Obstacle.PinContradicts(a, null, net[a].NotBefore - net.PinnedStart[a]!.Value));
            foreach (var use in net[a].Places)
            {
                var together = net[a].Together || (net.Whole[a] && net.Step[a] == 0) ? net.Units[a] - net.Done[a] : 1;
                var needed = Math.Min((long)use.PerUnit * together, int.MaxValue);
                if (needed > net.Problem.Places[use.Place].Capacity && net.Duration[a] + use.Afterwards > 0)
                    obstacles.Add(new Obstacle.FitsNoPlace(a, use.Place, (int)needed, net.Problem.Places[use.Place].Capacity));
            }
        }

        return obstacles.ToImmutable();
    }
}
