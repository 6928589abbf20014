namespace Pipeline.Scheduling;

/// <summary>
/// How full the places are over time, with the past in them. A piece takes its place once as long as any of its stays there runs.
/// </summary>
internal sealed class Occupancy
{
    private readonly Net net;
    private readonly Profile[] places = [];

    // Per place and piece that comes there in several activities: its stays, in order of their start.
    private readonly List<(long From, long Until)>[][] pieces = [];

    public Occupancy(Net net)
    {
        this.net = net;
        CanFill = net.HasStays;
        if (!CanFill)
            return;
        places = [.. net.Problem.Places.Select(p => new Profile(p.Capacity))];
        var counts = new int[places.Length];
        for (var a = 0; a < net.Count; a++)
        {
            foreach (var stay in net.Stays[a].Where(stay => stay.MayOverlap))
                counts[stay.Place] = Math.Max(counts[stay.Place], stay.FirstPiece + net.Units[a]);
        }

        pieces = [.. counts.Select(count => new List<(long, long)>[count])];
        foreach (var mine in pieces)
        {
            for (var i = 0; i < mine.Length; i++)
                mine[i] = [];
        }

        for (var a = 0; a < net.Count; a++)
        {
            foreach (var run in net[a].Past)
                Add(a, run.FirstUnit, run.Units, run.WorkStart);
        }
    }

    /// <summary>Whether any place can fill up at all.</summary>
    public bool CanFill { get; }

    /// <summary>Puts the units of a run in.</summary>
    public void Add(int activity, int first, int units, long workStart)
    {
        foreach (var stay in net.Stays[activity])
        {
            for (var k = 0; k < units; k++)
            {
                var from = workStart + (k * net.Step[activity]);
                Fill(stay, first + k, from, stay.Amount);
                if (!stay.MayOverlap)
                    continue;
                var mine = pieces[stay.Place][stay.FirstPiece + first + k];
                var i = mine.Count;
                while (i > 0 && mine[i - 1].From > from)
                    i--;
                mine.Insert(i, (from, from + stay.Length));
            }
        }
    }

    /// <summary>Takes the units of a run out again.</summary>
    public void Remove(int activity, int first, int units, long workStart)
    {
        foreach (var stay in net.Stays[activity])
        {
            for (var k = 0; k < units; k++)
            {
                var from = workStart + (k * net.Step[activity]);
                if (stay.MayOverlap)
                    pieces[stay.Place][stay.FirstPiece + first + k].Remove((from, from + stay.Length));
                Fill(stay, first + k, from, -stay.Amount);
            }
        }
    }

    /// <summary>The earliest time from which all places have room for a run's units; <see cref="long.MaxValue"/> if they never do.</summary>
    public long EarliestFit(int activity, int first, int units, long workStart)
    {
        var stays = net.Stays[activity];
        for (var again = stays.Length > 0; again;)
        {
            again = false;
            foreach (var stay in stays)
            {
                var fit = places[stay.Place].EarliestFit(new Stream(workStart, units, net.Step[activity], stay.Length, stay.Amount), Others(stay, first, units));
                if (fit == long.MaxValue)
                    return fit;
                again |= fit != workStart && stays.Length > 1;
                workStart = fit;
            }
        }

        return workStart;
    }

    /// <summary>The first place that would be too full, and when, if a run started its own work then; null if all have room.</summary>
    public (int Place, long At)? Overfilled(int activity, int first, int units, long workStart)
    {
        foreach (var stay in net.Stays[activity])
        {
            var stream = new Stream(workStart, units, net.Step[activity], stay.Length, stay.Amount);
            if (places[stay.Place].Overfilled(stream, Others(stay, first, units)) is { } at)
                return (stay.Place, at);
        }

        return null;
    }

    private ReadOnlySpan<List<(long From, long Until)>> Others(in Stay stay, int first, int units) =>
        stay.MayOverlap ? pieces[stay.Place].AsSpan(stay.FirstPiece + first, units) : [];

    // Only while no other stay of the piece runs.
    private void Fill(in Stay stay, int unit, long from, int amount)
    {
        var place = places[stay.Place];
        var until = from + stay.Length;
        if (stay.MayOverlap)
        {
            foreach (var other in pieces[stay.Place][stay.FirstPiece + unit])
            {
                if (other.From >= until)
                    break;
                if (other.Until <= from)
                    continue;
                place.Add(from, other.From, amount);
                from = other.Until;
            }
        }

        place.Add(from, until, amount);
    }
}
