using System.Collections.Immutable;

namespace Pipeline.Scheduling;

/// <summary>What can be seen to be impossible without searching.</summary>
internal static class Feasibility
{
    public static ImmutableArray<Obstacle> Of(Net net)
    {
        var tooEarly = Enumerable.Range(0, net.Count).Where(a => net.Done[a] < net.Units[a] && net.PinnedStart[a] < net[a].NotBefore);
        return OfRoom(net).AddRange(tooEarly.Select(a => new Obstacle.PinContradicts(a, null, net[a].NotBefore - net.PinnedStart[a]!.Value)));
    }

    /// <summary>What fits into no open interval, no day or no place.</summary>
    public static ImmutableArray<Obstacle> OfRoom(Net net)
    {
        var obstacles = ImmutableArray.CreateBuilder<Obstacle>();
        var hours = new Hours(net);
        for (var a = 0; a < net.Count; a++)
        {
            if (net.Done[a] == net.Units[a])
                continue;
            if (net.Attended[a] && hours.SmallestRun(a) > hours.Longest(a))
                obstacles.AddRange(TooLong(net, a, hours.SmallestRun(a), hours.Longest(a)));
            foreach (var stay in net.Stays[a])
            {
                var together = net[a].Together || (net.Whole[a] && net.Step[a] == 0) ? net.Units[a] - net.Done[a] : 1;
                var needed = (int)Math.Min((long)stay.Amount * together, int.MaxValue);
                var capacity = net.Problem.Places[stay.Place].Capacity;
                // pieces that the past has put there beyond what it holds need no more room
                if (needed > capacity && !(stay.MayOverlap && PlaceStays.Past(net, stay.Place) > capacity))
                    obstacles.Add(new Obstacle.FitsNoPlace(a, stay.Place, needed, capacity));
            }
        }

        return obstacles.ToImmutable();
    }

    // The hours, the cap or both; where it is neither for everybody, the hours of those who may do so much.
    private static IEnumerable<Obstacle> TooLong(Net net, int a, long needed, long longest)
    {
        var most = net.Workers[a].Select(w => net.MostPerDay[w]).DefaultIfEmpty(long.MaxValue).Max();
        var open = net.Workers[a].SelectMany(w => net.Open[w]).Select(o => o.Length).DefaultIfEmpty(0).Max();
        if (needed > open || needed <= most)
            yield return new Obstacle.FitsNoInterval(a, needed, needed > open ? open : longest);
        if (needed > most)
            yield return new Obstacle.FitsNoDay(a, needed, most);
    }
}
