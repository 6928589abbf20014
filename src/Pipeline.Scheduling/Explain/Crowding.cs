using System.Collections.Immutable;

namespace Pipeline.Scheduling;

/// <summary>Whether a run would find a place too full at a time, and whose leaving makes room for it.</summary>
internal sealed class Crowding
{
    private readonly Net net;
    private readonly ImmutableArray<Run> runs;
    private readonly Occupancy occupancy;

    // Per place and piece, when it stands there and in which run.
    private readonly Dictionary<int, List<(long From, long Until, int Run)>>[] pieces;

    public Crowding(Net net, ImmutableArray<Run> runs)
    {
        this.net = net;
        this.runs = runs;
        occupancy = new Occupancy(net);
        pieces = [.. net.Problem.Places.Select(_ => new Dictionary<int, List<(long, long, int)>>())];
        for (var r = 0; occupancy.CanFill && r < runs.Length; r++)
        {
            var run = runs[r];
            if (run.FirstUnit >= net.Done[run.Activity])
                occupancy.Add(run.Activity, run.FirstUnit, run.Units, run.WorkStart);
            foreach (var stay in net.Stays[run.Activity])
            {
                for (var k = 0; k < run.Units; k++)
                {
                    var from = run.WorkStart + (k * net.Step[run.Activity]);
                    var piece = PieceOf(run, stay, k);
                    if (!pieces[stay.Place].TryGetValue(piece, out var there))
                        pieces[stay.Place][piece] = there = [];
                    there.Add((from, from + stay.Length, r));
                }
            }
        }
    }

    /// <summary>The place in which a run starts at the very tick at which it has room, and a run whose unit leaves then; null if all have room before.</summary>
    public Reason.PlaceFull? Until(int r) => Overfilled(r, runs[r].WorkStart - 1) is var (place, at) && Leaving(r, runs[r].WorkStart - 1, place, at) is { } leaving && leaving.Until == at + 1
        ? new Reason.PlaceFull(place, leaving.Run)
        : null;

    /// <summary>The place that would have been too full for a run at another time, and the run whose unit leaves it next; null if there was room.</summary>
    public Reason.PlaceFull? At(int r, long workStart) => Overfilled(r, workStart) is var (place, at) && Leaving(r, workStart, place, at) is { } leaving
        ? new Reason.PlaceFull(place, leaving.Run)
        : null;

    private (int Place, long At)? Overfilled(int r, long workStart)
    {
        var run = runs[r];
        if (net.Stays[run.Activity].Length == 0)
            return null;
        occupancy.Remove(run.Activity, run.FirstUnit, run.Units, run.WorkStart);
        var overfilled = occupancy.Overfilled(run.Activity, run.FirstUnit, run.Units, workStart);
        occupancy.Add(run.Activity, run.FirstUnit, run.Units, run.WorkStart);
        return overfilled;
    }

    // Of the pieces there at a time, other than those the run would have there itself, the one that leaves first.
    private (long Until, int Run)? Leaving(int r, long workStart, int place, long at)
    {
        var run = runs[r];
        var stay = Array.Find(net.Stays[run.Activity], stay => stay.Place == place);
        var (from, to) = new Stream(workStart, run.Units, net.Step[run.Activity], stay.Length, stay.Amount).At(at);
        var own = Enumerable.Range(from, to - from).Select(k => PieceOf(run, stay, k)).ToHashSet();
        (long Until, int Run)? first = null;
        foreach (var (piece, stays) in pieces[place])
        {
            if (own.Contains(piece) || Leaves(stays, at) is not { } leaves)
                continue;
            if (first is null || leaves.CompareTo(first.Value) < 0)
                first = leaves;
        }

        return first;
    }

    // A piece is gone when the last of its stays that hang together is over.
    private static (long Until, int Run)? Leaves(List<(long From, long Until, int Run)> stays, long at)
    {
        (long Until, int Run)? leaves = null;
        foreach (var (from, until, run) in stays.Order())
        {
            if (from <= (leaves?.Until ?? at) && until > (leaves?.Until ?? at))
                leaves = (until, run);
        }

        return leaves;
    }

    // A unit that comes to a place in one activity only has a number that no other has.
    private int PieceOf(Run run, in Stay stay, int k) =>
        stay.MayOverlap ? stay.FirstPiece + run.FirstUnit + k : -1 - net.Offset[run.Activity] - run.FirstUnit - k;
}
