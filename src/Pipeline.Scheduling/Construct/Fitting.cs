using System.Runtime.InteropServices;

namespace Pipeline.Scheduling;

/// <summary>Finds the earliest room for a run in a timetable.</summary>
internal sealed class Fitting(Timetable table)
{
    private readonly Net net = table.Net;

    /// <summary>
    /// The spot in which the units' own work starts earliest, at or after <paramref name="workFrom"/>;
    /// <see cref="Spot.None"/> if there is none before <paramref name="until"/>.
    /// </summary>
    /// <param name="activity">Index of the activity.</param>
    /// <param name="first">Its first unit.</param>
    /// <param name="units">How many.</param>
    /// <param name="workFrom">When the first unit's own work may start.</param>
    /// <param name="startFrom">When the hands may begin.</param>
    /// <param name="until">No spot from here on.</param>
    /// <param name="hands">Who has it where others could be as soon.</param>
    public Spot Earliest(int activity, int first, int units, long workFrom, long startFrom, long until = long.MaxValue, int hands = -1)
    {
        table.Work++;
        if (!net.Attended[activity])
        {
            var start = table.PlacesFit(activity, first, units, Math.Max(workFrom, startFrom));
            return start >= until ? Spot.None : new Spot(-1, -1, -1, -1, start, 0, start, start);
        }

        var best = Spot.None;
        var workers = net.Workers[activity];
        var own = Math.Max(0, Array.IndexOf(workers, hands));
        for (var i = 0; i < workers.Length; i++)
        {
            var worker = workers[(own + i) % workers.Length];
            var sittings = table.Sittings[worker];
            var least = Least(activity, units);
            var from = net.Work(activity, units) > 0 ? Math.Max(startFrom, workFrom) : startFrom;
            for (var d = table.NextWithRoom(worker, Sorted.FirstLater(sittings, from, static sitting => sitting.End), least); d < sittings.Length; d = table.NextWithRoom(worker, d + 1, least))
            {
                if (sittings[d].Start >= Math.Min(until, best.WorkStart))
                    break;
                var spot = InSitting(activity, first, units, worker, d, workFrom, startFrom);
                if (spot.IsNone)
                    continue;
                if (spot.WorkStart < until && IsBetter(activity, spot, best, isSooner: spot.WorkStart < best.WorkStart))
                    best = spot;
                break;
            }
        }

        return best;
    }

    private long Least(int activity, int units) => net[activity].SetUp + net.Work(activity, units) + net[activity].PutAway;

    /// <summary>The earliest spot in one open interval.</summary>
    public Spot InSitting(int activity, int first, int units, int worker, int d, long workFrom, long startFrom)
    {
        var sitting = table.Sittings[worker][d];
        var least = Least(activity, units);
        if (sitting.Free < least)
            return Spot.None;
        var from = Math.Max(sitting.Start, startFrom);
        for (var b = 0; b <= sitting.Blocks.Count; b++)
        {
            var to = b < sitting.Blocks.Count ? sitting.Blocks[b].Start : sitting.End - sitting.Tail;
            // a tool's taking over may give back a close-down, so the last gap is looked at in any case
            if ((to - from >= least && to - net[activity].PutAway - net.Work(activity, units) >= workFrom) || b == sitting.Blocks.Count)
            {
                var spot = net.Tool[activity] < 0
                    ? WithoutTool(activity, first, units, worker, d, from, to, workFrom, least)
                    : WithTool(activity, first, units, worker, d, from, b < sitting.Blocks.Count ? to : sitting.End, workFrom, least);
                if (!spot.IsNone)
                    return spot;
            }

            if (b < sitting.Blocks.Count)
                from = Math.Max(from, sitting.Blocks[b].End);
        }

        return Spot.None;
    }

    private Spot WithoutTool(int activity, int first, int units, int worker, int d, long from, long to, long workFrom, long least)
    {
        var work = Math.Max(from + net[activity].SetUp, workFrom);
        work = table.PlacesFit(activity, first, units, work);
        var start = work - net[activity].SetUp;
        if (work == long.MaxValue || start + least > to || start >= table.Sittings[worker][d].End)
            return Spot.None;
        return new Spot(worker, d, -1, -1, start, 0, work, start + least);
    }

    private Spot WithTool(int activity, int first, int units, int worker, int d, long from, long to, long workFrom, long least)
    {
        var best = Spot.None;
        for (var number = 0; number < table.Uses[net.Tool[activity]].Length; number++)
        {
            var spot = WithTool(activity, first, units, worker, d, from, to, workFrom, least, number);
            if (IsBetter(activity, spot, best, isSooner: Cost(activity, spot).CompareTo(Cost(activity, best)) < 0))
                best = spot;
        }

        return best;
    }

    // Of several tools alike: the one that is ready soonest, what has to be closed down for it counted too.
    private (long, long) Cost(int activity, Spot spot)
    {
        if (spot.IsNone)
            return (long.MaxValue, 0);
        var uses = table.Uses[net.Tool[activity]][spot.ToolNumber];
        if (uses.Count == 0 || spot.ToolPosition == 0)
            return (spot.WorkStart + table.CloseDown(activity), spot.CleanOut);
        var before = uses[spot.ToolPosition - 1];
        return (spot.WorkStart + table.CloseDown(activity) - (table.HasToClose(before, spot.Start) ? 0 : table.CloseDown(before.Activity)), spot.CleanOut);
    }

    // a tool that needs less getting ready is of no use to a decided start if it comes free too late for it
    private bool IsBetter(int activity, Spot spot, Spot best, bool isSooner) =>
        KeepsPin(activity, spot) == KeepsPin(activity, best) ? isSooner : KeepsPin(activity, spot);

    private bool KeepsPin(int activity, Spot spot) => net.PinnedStart[activity] is not { } pin || spot.Start == pin;

    private Spot WithTool(int activity, int first, int units, int worker, int d, long from, long to, long workFrom, long least, int number)
    {
        var sitting = table.Sittings[worker][d];
        var tool = net.Tool[activity];
        var uses = table.Uses[tool][number];
        var start = from;
        var position = Sorted.FirstLater(CollectionsMarshal.AsSpan(uses), start, static use => use.Start);
        while (start + least <= to && start < sitting.End)
        {
            while (position < uses.Count && uses[position].Start <= start)
                position++;
            var before = position > 0 ? uses[position - 1] : null;
            if (before is not null && before.End > start)
            {
                start = before.End;
                continue;
            }

            var cleanOut = net.CleanOut(tool, table.Held(before, start), net.Load[activity]);
            var work = start + cleanOut + net[activity].SetUp;
            var fit = table.PlacesFit(activity, first, units, Math.Max(work, workFrom));
            if (fit == long.MaxValue)
                return Spot.None;
            if (fit > work)
            {
                start += fit - work;
                if ((position < uses.Count && uses[position].Start <= start) || net.CleanOut(tool, table.Held(before, start), net.Load[activity]) != cleanOut)
                    continue;
                work = fit;
            }

            var end = start + cleanOut + least;
            if (end > to)
                return Spot.None;
            var after = position < uses.Count ? uses[position] : null;
            if (after is not null && after.Start < end)
            {
                start = after.End;
                continue;
            }

            var tail = TailAdded(activity, sitting, before, after, start);
            if (AfterStillFits(activity, sitting, start, end, after, end - start + tail) && TailFits(sitting, end, end - start, tail))
                return new Spot(worker, d, number, position, start, cleanOut, work, end);
            if (after is null)
                return Spot.None;
            start = after.End;
        }

        return Spot.None;
    }

    // The run that uses the tool next may need another clean-out now, and room for it.
    private bool AfterStillFits(int activity, Sitting mine, long start, long end, Placed? after, long ticks)
    {
        if (after is null || after.IsPast)
            return true;
        var leftAt = mine.End;
        var held = after.Start >= leftAt ? -1 : net.Load[activity];
        var cleanOut = net.CleanOut(net.Tool[activity], held, net.Load[after.Activity]);
        if (cleanOut == after.CleanOut)
            return true;
        var sitting = table.Sittings[after.Worker][after.Sitting];
        var ownWork = sitting.Workday == mine.Workday ? ticks : 0;
        if (net.PinnedStart[after.Activity] is not null)
            return PinnedStillFits(after, cleanOut - after.CleanOut, ownWork);
        var newStart = after.Start + after.CleanOut - cleanOut;
        if (newStart < end || newStart >= leftAt != after.Start >= leftAt)
            return false;
        if (cleanOut < after.CleanOut)
            return true;
        var i = sitting.Blocks.IndexOf(after);
        var added = cleanOut - after.CleanOut;
        return newStart >= sitting.Start
            && newStart >= net[after.Activity].NotBefore
            && (i == 0 || sitting.Blocks[i - 1].End <= newStart)
            && added + ownWork <= sitting.Workday.Free;
    }

    // What is pinned begins when it must, and another clean-out moves its own work.
    private bool PinnedStillFits(Placed pinned, long added, long ownWork)
    {
        var sitting = table.Sittings[pinned.Worker][pinned.Sitting];
        var end = pinned.End + added;
        var uses = table.Uses[net.Tool[pinned.Activity]][pinned.ToolNumber];
        return sitting.Blocks.TrueForAll(block => block == pinned || block.Start < pinned.Start || block.Start >= end)
            && uses.TrueForAll(use => use == pinned || use.Start < pinned.Start || use.Start >= end)
            && end + sitting.Tail <= sitting.End
            && added + ownWork <= sitting.Workday.Free
            && net.Stays[pinned.Activity].Length == 0
            && Placing.CouldShift(table, pinned.Activity, added);
    }

    // By how many ticks the close-downs at the end of an interval grow with a run in it.
    private long TailAdded(int activity, Sitting sitting, Placed? before, Placed? after, long start)
    {
        long tail = 0;
        if (before is { Sitting: >= 0 } && ReferenceEquals(table.Sittings[before.Worker][before.Sitting], sitting)
            && table.HasToClose(before, after?.Start ?? long.MaxValue) && !table.HasToClose(before, start))
            tail -= table.CloseDown(before.Activity);
        if ((after?.Start ?? long.MaxValue) >= sitting.End)
            tail += table.CloseDown(activity);
        return tail;
    }

    private static bool TailFits(Sitting sitting, long end, long ticks, long tail) =>
        Math.Max(sitting.LastEnd, end) + sitting.Tail + tail <= sitting.End && ticks + tail <= sitting.Workday.Free;
}
