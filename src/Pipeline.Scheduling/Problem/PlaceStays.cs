namespace Pipeline.Scheduling;

/// <summary>The stay of each unit of an activity in a place that can fill up.</summary>
/// <param name="Place">Index of the place.</param>
/// <param name="Amount">How much of it a unit takes.</param>
/// <param name="Length">Ticks from the start of the unit's own work.</param>
/// <param name="FirstPiece">
/// The number of unit 0 among the pieces that come to the place in several activities, those of the other units following on it;
/// −1 if the units come there in this activity only.
/// </param>
internal readonly record struct Stay(int Place, int Amount, long Length, int FirstPiece)
{
    /// <summary>Whether other stays of the same pieces may overlap this one.</summary>
    public bool MayOverlap => FirstPiece >= 0;
}

/// <summary>Finds the stays that matter.</summary>
internal static class PlaceStays
{
    /// <summary>Per activity; what is done already stays too.</summary>
    public static Stay[][] Of(Problem problem, long[] duration)
    {
        var stays = new List<Stay>[problem.Activities.Length];
        for (var a = 0; a < stays.Length; a++)
            stays[a] = [];
        for (var p = 0; p < problem.Places.Length; p++)
            Add(problem, duration, p, stays);
        return [.. stays.Select(mine => mine.ToArray())];
    }

    /// <summary>The activities whose units stay in a place that can fill up.</summary>
    public static IEnumerable<(int Activity, Stay Stay)> In(Net net, int place) =>
        Enumerable.Range(0, net.Count).SelectMany(a => net.Stays[a].Where(stay => stay.Place == place).Select(stay => (a, stay)));

    /// <summary>As much of a place as past work may have filled at a time.</summary>
    public static long Past(Net net, int place)
    {
        var pieces = new HashSet<int>();
        long filled = 0;
        foreach (var (a, stay) in In(net, place))
        {
            for (var k = 0; k < net.Done[a]; k++)
                filled += !stay.MayOverlap || pieces.Add(stay.FirstPiece + k) ? stay.Amount : 0;
        }

        return filled;
    }

    private static void Add(Problem problem, long[] duration, int place, List<Stay>[] stays)
    {
        var users = new List<(int Activity, PlaceUse Use)>();
        for (var a = 0; a < stays.Length; a++)
        {
            foreach (var use in problem.Activities[a].Places)
            {
                if (use.Place == place && use.PerUnit > 0 && duration[a] + use.Afterwards > 0)
                    users.Add((a, use));
            }
        }

        // activities without a lot have numbers that no lot has
        var lots = users.GroupBy(user => problem.Activities[user.Activity].Lot is { } lot ? (Lot: lot, Alone: -1) : (Lot: 0, Alone: user.Activity)).ToList();
        if (lots.Sum(lot => lot.Max(user => (long)user.Use.PerUnit * problem.Activities[user.Activity].Units)) <= problem.Places[place].Capacity)
            return;
        var pieces = 0;
        foreach (var lot in lots)
        {
            var isShared = lot.Count() > 1;
            foreach (var (a, use) in lot)
                stays[a].Add(new Stay(place, use.PerUnit, duration[a] + use.Afterwards, isShared ? pieces : -1));
            if (isShared)
                pieces += lot.Max(user => problem.Activities[user.Activity].Units);
        }
    }
}
