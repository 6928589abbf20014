namespace Pipeline.Scheduling;

/// <summary>A run that has its place in a timetable.</summary>
internal sealed class Placed
{
    public int Activity;
    public int First;
    public int Units;
    public int Worker = -1;
    public int Sitting = -1;
    public int ToolNumber = -1;
    public long Start;
    public long CleanOut;
    public long WorkStart;
    public long End;
    public bool IsPast;

    /// <summary>Where it was put at first; a clean-out may have changed since.</summary>
    public Spot Spot;
}

/// <summary>Where a run could go.</summary>
internal readonly record struct Spot(
    int Worker,
    int Sitting,
    int ToolNumber,
    int ToolPosition,
    long Start,
    long CleanOut,
    long WorkStart,
    long End)
{
    public static readonly Spot None = new(-1, -1, -1, -1, long.MaxValue, 0, long.MaxValue, long.MaxValue);

    public bool IsNone => Start == long.MaxValue;
}

/// <summary>
/// A half-filled schedule into whose gaps more runs can be put. What is in it keeps every constraint but those waits whose
/// other end is not in it yet. Runs are taken out only in the reverse order of putting in.
/// </summary>
internal sealed class Timetable
{
    public const long Unset = long.MinValue;

    private readonly Occupancy occupancy;
    private readonly SittingRoom[] rooms;

    public Timetable(Net net)
    {
        Net = net;
        Starts = new long[net.Offset[^1]];
        Array.Fill(Starts, Unset);
        Sittings = [.. Enumerable.Range(0, net.Open.Length).Select(w => SittingsOf(net, w))];
        Uses = [.. net.Problem.Tools.Select(t => Enumerable.Range(0, t.Count).Select(_ => new List<Placed>()).ToArray())];
        occupancy = new Occupancy(net);
        PutPast();
        rooms = [.. Sittings.Select(sittings => new SittingRoom(sittings))];
    }

    public Net Net { get; }

    /// <summary>Own start of every unit, or <see cref="Unset"/>.</summary>
    public long[] Starts { get; }

    public Sitting[][] Sittings { get; }

    public List<Placed>[][] Uses { get; }

    /// <summary>In order of putting in.</summary>
    public List<Placed> Runs { get; } = [];

    /// <summary>Placements tried.</summary>
    public long Work { get; set; }

    /// <summary>A worker's first open interval from one on with so many free ticks; their number if there is none.</summary>
    public int NextWithRoom(int worker, int sitting, long ticks) => rooms[worker].Next(sitting, ticks);

    /// <summary>The earliest time from which the places have room for a run's units.</summary>
    public long PlacesFit(int activity, int first, int units, long workStart) => occupancy.EarliestFit(activity, first, units, workStart);

    /// <summary>What a tool holds at a time, if it was last used in a run: a load, or −1 for clean.</summary>
    public int Held(Placed? last, long at) => last is null || at >= LeftAt(last) ? -1 : Net.Load[last.Activity];

    /// <summary>The end of the interval in which a run used its tool.</summary>
    public long LeftAt(Placed use) => use.Sitting >= 0 ? Sittings[use.Worker][use.Sitting].End : use.End;

    /// <summary>Whether the worker of a run has to close its tool down, given the next use.</summary>
    public bool HasToClose(Placed use, long nextStart) => !use.IsPast && nextStart >= LeftAt(use);

    public long CloseDown(int activity) => Net.Problem.Tools[Net.Tool[activity]].CloseDown[Net.Load[activity]];

    /// <summary>Puts a run where <see cref="Fitting"/> found room for it.</summary>
    public Placed Put(int activity, int first, int units, Spot spot)
    {
        var run = new Placed
        {
            Activity = activity,
            First = first,
            Units = units,
            Worker = spot.Worker,
            Sitting = spot.Sitting,
            ToolNumber = spot.ToolNumber,
            Start = spot.Start,
            CleanOut = spot.CleanOut,
            WorkStart = spot.WorkStart,
            End = spot.End,
            Spot = spot,
        };
        if (spot.ToolNumber >= 0)
            TakeTool(run, spot.ToolPosition);
        if (run.Sitting >= 0)
        {
            var sitting = Sittings[run.Worker][run.Sitting];
            sitting.Blocks.Insert(Position(sitting.Blocks, run.Start, run.End), run);
            sitting.Use(run.End - run.Start);
            rooms[run.Worker].Changed(sitting.Workday);
        }

        occupancy.Add(activity, first, units, run.WorkStart);
        for (var k = 0; k < units; k++)
            Starts[Net.Offset[activity] + first + k] = run.WorkStart + (k * Net.Step[activity]);
        Runs.Add(run);
        return run;
    }

    /// <summary>The same runs in a timetable of their own.</summary>
    public Timetable Copy()
    {
        var copy = new Timetable(Net);
        for (var i = copy.Runs.Count; i < Runs.Count; i++)
            copy.PutAgain(Runs[i]);
        return copy;
    }

    /// <summary>Puts in what was in a timetable alike, at the same place.</summary>
    public void PutAgain(Placed run) => Put(run.Activity, run.First, run.Units, run.Spot);

    /// <summary>Takes the last run out again.</summary>
    public void TakeOutLast()
    {
        var run = Runs[^1];
        Runs.RemoveAt(Runs.Count - 1);
        for (var k = 0; k < run.Units; k++)
            Starts[Net.Offset[run.Activity] + run.First + k] = Unset;
        occupancy.Remove(run.Activity, run.First, run.Units, run.WorkStart);
        if (run.Sitting >= 0)
        {
            var sitting = Sittings[run.Worker][run.Sitting];
            sitting.Blocks.Remove(run);
            sitting.Use(run.Start - run.End);
            rooms[run.Worker].Changed(sitting.Workday);
        }

        if (run.ToolNumber >= 0)
            LeaveTool(run);
    }

    /// <summary>Takes out all but the first so many runs.</summary>
    public void TakeOutAfter(int count)
    {
        while (Runs.Count > count)
            TakeOutLast();
    }

    /// <summary>Where a block that starts then belongs.</summary>
    public static int Position(List<Placed> blocks, long start, long end)
    {
        var i = blocks.Count;
        while (i > 0 && (blocks[i - 1].Start > start || (blocks[i - 1].Start == start && blocks[i - 1].End > end)))
            i--;
        return i;
    }

    private static Sitting[] SittingsOf(Net net, int worker)
    {
        var sittings = new Sitting[net.Open[worker].Length];
        var day = net.Day[worker];
        for (var (first, last) = (0, 0); first < sittings.Length; first = last)
        {
            while (last < sittings.Length && day[last] == day[first])
                last++;
            var workday = new Workday(first, last - 1, net.MostPerDay[worker]);
            for (var i = first; i < last; i++)
                sittings[i] = new Sitting(net.Open[worker][i], workday);
        }

        return sittings;
    }

    private void TakeTool(Placed run, int position)
    {
        var uses = Uses[Net.Tool[run.Activity]][run.ToolNumber];
        var before = position > 0 ? uses[position - 1] : null;
        var after = position < uses.Count ? uses[position] : null;
        var afterStart = after?.Start ?? long.MaxValue;
        if (before is not null && HasToClose(before, afterStart) && !HasToClose(before, run.Start))
            AddTail(before, -CloseDown(before.Activity));
        uses.Insert(position, run);
        if (after is { IsPast: false })
            SetCleanOut(after, Net.CleanOut(Net.Tool[run.Activity], Held(run, after.Start), Net.Load[after.Activity]));
        if (HasToClose(run, after?.Start ?? long.MaxValue))
            AddTail(run, CloseDown(run.Activity));
    }

    private void LeaveTool(Placed run)
    {
        var uses = Uses[Net.Tool[run.Activity]][run.ToolNumber];
        var position = uses.IndexOf(run);
        var before = position > 0 ? uses[position - 1] : null;
        var after = position + 1 < uses.Count ? uses[position + 1] : null;
        if (HasToClose(run, after?.Start ?? long.MaxValue))
            AddTail(run, -CloseDown(run.Activity));
        uses.RemoveAt(position);
        if (after is { IsPast: false })
            SetCleanOut(after, Net.CleanOut(Net.Tool[run.Activity], Held(before, after.Start), Net.Load[after.Activity]));
        if (before is not null && HasToClose(before, after?.Start ?? long.MaxValue) && !HasToClose(before, run.Start))
            AddTail(before, CloseDown(before.Activity));
    }

    private void AddTail(Placed run, long ticks)
    {
        var sitting = Sittings[run.Worker][run.Sitting];
        sitting.KeepForTail(ticks);
        rooms[run.Worker].Changed(sitting.Workday);
    }

    private void SetCleanOut(Placed run, long cleanOut)
    {
        if (run.CleanOut == cleanOut)
            return;
        if (Net.PinnedStart[run.Activity] is null)
            run.Start += run.CleanOut - cleanOut;
        else
            Shift(run, cleanOut - run.CleanOut);
        if (run.Sitting >= 0)
        {
            var sitting = Sittings[run.Worker][run.Sitting];
            sitting.Use(cleanOut - run.CleanOut);
            rooms[run.Worker].Changed(sitting.Workday);
        }

        run.CleanOut = cleanOut;
    }

    // The own work of what begins at a pinned start.
    private void Shift(Placed run, long by)
    {
        occupancy.Remove(run.Activity, run.First, run.Units, run.WorkStart);
        run.WorkStart += by;
        run.End += by;
        occupancy.Add(run.Activity, run.First, run.Units, run.WorkStart);
        for (var k = 0; k < run.Units; k++)
            Starts[Net.Offset[run.Activity] + run.First + k] += by;
    }

    private void PutPast()
    {
        for (var a = 0; a < Net.Count; a++)
        {
            foreach (var run in Net[a].Past)
                PutPast(run);
        }
    }

    private void PutPast(Run run)
    {
        var placed = new Placed
        {
            Activity = run.Activity,
            First = run.FirstUnit,
            Units = run.Units,
            Worker = run.Worker,
            ToolNumber = run.ToolNumber,
            Start = run.Start,
            CleanOut = run.CleanOut,
            WorkStart = run.WorkStart,
            End = run.End,
            IsPast = true,
        };
        for (var d = 0; run.Worker >= 0 && d < Sittings[run.Worker].Length; d++)
        {
            var sitting = Sittings[run.Worker][d];
            if (run.Start >= sitting.End || run.End <= sitting.Start)
                continue;
            if (sitting.Start <= run.Start)
                placed.Sitting = d;
            sitting.Blocks.Insert(Position(sitting.Blocks, run.Start, run.End), placed);
            sitting.Use(Math.Min(run.End, sitting.End) - Math.Max(run.Start, sitting.Start));
        }

        if (run.ToolNumber >= 0 && Net.Tool[run.Activity] >= 0)
        {
            var uses = Uses[Net.Tool[run.Activity]][run.ToolNumber];
            uses.Insert(Position(uses, run.Start, run.End), placed);
        }

        for (var k = 0; k < run.Units; k++)
            Starts[Net.Offset[run.Activity] + run.FirstUnit + k] = run.WorkStart + (k * Net.Step[run.Activity]);
        Runs.Add(placed);
    }
}
