namespace Pipeline.Scheduling;

/// <summary>A run that has its place in a timetable.</summary>
internal sealed class Placed
{
    public int Activity;
    public int First;
    public int Units;
    public int Worker = -1;
    public int Day = -1;
    public int ToolNumber = -1;
    public long Start;
    public long CleanOut;
    public long WorkStart;
    public long End;
    public bool IsPast;

    /// <summary>Where it was put at first; a clean-out may have changed since.</summary>
    public Spot Spot;
}

/// <summary>One open interval of one worker and what is in it.</summary>
internal sealed class Day(Interval open, long most)
{
    public readonly long Start = open.Start;
    public readonly long End = open.End;

    /// <summary>Cap on attended ticks.</summary>
    public readonly long Most = most;

    /// <summary>In order of start.</summary>
    public readonly List<Placed> Blocks = [];

    public long Used;

    /// <summary>Ticks at the end kept for close-downs.</summary>
    public long Tail;

    /// <summary>Attended ticks that are left.</summary>
    public long Free => Math.Min(End - Start, Most) - Used - Tail;

    public long LastEnd => Blocks.Count == 0 ? Start : Math.Max(Start, Blocks[^1].End);
}

/// <summary>Where a run could go.</summary>
internal readonly record struct Spot(
    int Worker,
    int Day,
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
    private readonly DayRoom[] rooms;

    public Timetable(Net net)
    {
        Net = net;
        Starts = new long[net.Offset[^1]];
        Array.Fill(Starts, Unset);
        Days = [.. net.Open.Select((open, w) => open.Select(i => new Day(i, net.Problem.Workers[w].MostPerInterval ?? long.MaxValue)).ToArray())];
        Uses = [.. net.Problem.Tools.Select(t => Enumerable.Range(0, t.Count).Select(_ => new List<Placed>()).ToArray())];
        occupancy = new Occupancy(net);
        PutPast();
        rooms = [.. Days.Select(days => new DayRoom(days))];
    }

    public Net Net { get; }

    /// <summary>Own start of every unit, or <see cref="Unset"/>.</summary>
    public long[] Starts { get; }

    public Day[][] Days { get; }

    public List<Placed>[][] Uses { get; }

    /// <summary>In order of putting in.</summary>
    public List<Placed> Runs { get; } = [];

    /// <summary>Placements tried.</summary>
    public long Work { get; set; }

    /// <summary>A worker's first open interval from one on with so many free ticks; their number if there is none.</summary>
    public int NextWithRoom(int worker, int day, long ticks) => rooms[worker].Next(day, ticks);

    /// <summary>The earliest time from which the places have room for a run's units.</summary>
    public long PlacesFit(int activity, int first, int units, long workStart) => occupancy.EarliestFit(activity, first, units, workStart);

    /// <summary>What a tool holds at a time, if it was last used in a run: a load, or −1 for clean.</summary>
    public int Held(Placed? last, long at) => last is null || at >= LeftAt(last) ? -1 : Net.Load[last.Activity];

    /// <summary>The end of the interval in which a run used its tool.</summary>
    public long LeftAt(Placed use) => use.Day >= 0 ? Days[use.Worker][use.Day].End : use.End;

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
            Day = spot.Day,
            ToolNumber = spot.ToolNumber,
            Start = spot.Start,
            CleanOut = spot.CleanOut,
            WorkStart = spot.WorkStart,
            End = spot.End,
            Spot = spot,
        };
        if (spot.ToolNumber >= 0)
            TakeTool(run, spot.ToolPosition);
        if (run.Day >= 0)
        {
            var day = Days[run.Worker][run.Day];
            day.Blocks.Insert(Position(day.Blocks, run.Start, run.End), run);
            day.Used += run.End - run.Start;
            rooms[run.Worker].Set(run.Day, day.Free);
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
        if (run.Day >= 0)
        {
            var day = Days[run.Worker][run.Day];
            day.Blocks.Remove(run);
            day.Used -= run.End - run.Start;
            rooms[run.Worker].Set(run.Day, day.Free);
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
        var day = Days[run.Worker][run.Day];
        day.Tail += ticks;
        rooms[run.Worker].Set(run.Day, day.Free);
    }

    private void SetCleanOut(Placed run, long cleanOut)
    {
        if (run.CleanOut == cleanOut)
            return;
        if (Net.PinnedStart[run.Activity] is null)
            run.Start += run.CleanOut - cleanOut;
        else
            Shift(run, cleanOut - run.CleanOut);
        if (run.Day >= 0)
        {
            var day = Days[run.Worker][run.Day];
            day.Used += cleanOut - run.CleanOut;
            rooms[run.Worker].Set(run.Day, day.Free);
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
        for (var d = 0; run.Worker >= 0 && d < Days[run.Worker].Length; d++)
        {
            var day = Days[run.Worker][d];
            if (run.Start >= day.End || run.End <= day.Start)
                continue;
            if (day.Start <= run.Start)
                placed.Day = d;
            day.Blocks.Insert(Position(day.Blocks, run.Start, run.End), placed);
            day.Used += Math.Min(run.End, day.End) - Math.Max(run.Start, day.Start);
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
