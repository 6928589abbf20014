using System.Runtime.InteropServices;

namespace Pipeline.Scheduling;

/// <summary>One run at its position in a sequence, and the times that re-timing gave it. Without units it is an empty position.</summary>
internal struct Slot
{
    public int Activity;
    public int First;
    public int Units;
    public int Worker;
    public int ToolNumber;
    public int Day;

    /// <summary>Which of several tools alike it takes; −1 for the one that is best at the time.</summary>
    public int ToolWish;

    /// <summary>Not begun before this tick, though it could be.</summary>
    public long Delay;

    public const long NoDelay = long.MinValue / 4;

    /// <summary>Held back to here, so that a greatest wait to a later run is kept; holds for one trial.</summary>
    public long HeldUntil;
    public int HeldInTrial;

    public long Start;
    public long CleanOut;

    /// <summary>By how much the ticks of close-down at the end of the interval grow with this run.</summary>
    public long Closing;

    /// <summary>What speaks for the way the intervals before it are filled.</summary>
    public double Packing;
    public long WorkStart;
    public long End;

    // What the slot adds to the totals.
    public long Finish;
    public double Completion;
    public long Changes;
    public double Holds;

    /// <summary>A run without wishes, and when and with which tool another schedule has it.</summary>
    public static Slot Of(int activity, int first, int units, int worker, long start, int toolNumber) => new()
    {
        Activity = activity,
        First = first,
        Units = units,
        Worker = worker,
        Start = start,
        ToolNumber = toolNumber,
        Day = -1,
        ToolWish = -1,
        Delay = NoDelay,
    };
}

/// <summary>
/// A schedule as the order in which its runs are taken up. The times follow from the order: each run starts as early as its
/// worker, its tool and the waits allow. A change is tried, and kept or taken back; only what it moves is timed anew.
/// </summary>
internal sealed class Sequence
{
    private const int BlockBits = 5;

    // So that a run put in somewhere moves only its neighbours.
    private const int RunsPerEmpty = 6;
    private const int EmptyWithin = 120;

    private readonly Ground ground;
    private readonly List<(int Position, Slot Slot)> journal = [];
    private readonly List<long> journalStates = [];
    private int[] touched = [];
    private long[] blockFinish = [];
    private int countBefore;
    private (int Runs, double Completion, long Changes, double Holds) totalsBefore;

    /// <summary>A sequence of the given runs, with empty positions strewn in.</summary>
    public Sequence(Ground ground, IReadOnlyList<Slot> runs)
    {
        this.ground = ground;
        var slots = new List<Slot>();
        for (var i = 0; i < runs.Count; i++)
        {
            slots.Add(runs[i]);
            if (i % RunsPerEmpty == RunsPerEmpty - 1)
                slots.Add(new Slot { Finish = long.MinValue });
        }

        Runs = runs.Count;
        Starts = new long[ground.Net.Offset[^1]];
        ground.Net.FillPast(Starts);
        PositionOf = new int[Starts.Length];
        Array.Fill(PositionOf, -1);
        Places = new Occupancy(ground.Net);
        Count = slots.Count;
        Grow(Count);
        for (var p = 0; p < Count; p++)
        {
            Slots[p] = slots[p];
            Index(p);
        }
    }

    public Slot[] Slots { get; private set; } = [];

    /// <summary>Before each position, and after the last: what every worker and tool is about.</summary>
    public long[] States { get; private set; } = [];

    /// <summary>Positions, the empty ones too.</summary>
    public int Count { get; private set; }

    public int Runs { get; private set; }

    /// <summary>Positions the change under way has touched.</summary>
    public int Touched => journal.Count;

    /// <summary>Number of the change under way.</summary>
    public int Trial { get; private set; }

    /// <summary>Own start of every unit.</summary>
    public long[] Starts { get; }

    /// <summary>Position of the run that every unit is in; −1 if it is done.</summary>
    public int[] PositionOf { get; }

    public Occupancy Places { get; }

    public double Completion { get; set; }

    public long Changes { get; set; }

    public double Holds { get; set; }

    /// <summary>When the last run finishes.</summary>
    public long Finish
    {
        get
        {
            var finish = ground.PastFinish;
            for (var b = 0; b <= (Count - 1) >> BlockBits; b++)
                finish = Math.Max(finish, blockFinish[b]);
            return finish;
        }
    }

    /// <summary>Begins a change; it stays unless it is taken back.</summary>
    public void Begin()
    {
        Trial++;
        journal.Clear();
        journalStates.Clear();
        countBefore = Count;
        totalsBefore = (Runs, Completion, Changes, Holds);
    }

    /// <summary>Remembers a position before it is changed.</summary>
    public void Touch(int position)
    {
        if (touched[position] == Trial)
            return;
        touched[position] = Trial;
        journal.Add((position, Slots[position]));
        journalStates.AddRange(States.AsSpan(position * ground.StateSize, ground.StateSize));
    }

    /// <summary>Brings the finish up to date after re-timing.</summary>
    public void Settle()
    {
        var last = -1;
        for (var i = 0; i < journal.Count; i++)
        {
            var block = journal[i].Position >> BlockBits;
            if (block != last)
                SettleBlock(block);
            last = block;
        }
    }

    /// <summary>Undoes everything since <see cref="Begin"/>.</summary>
    public void TakeBack()
    {
        Count = countBefore;
        (Runs, Completion, Changes, Holds) = totalsBefore;
        for (var i = 0; Places.CanFill && i < journal.Count; i++)
        {
            if (journal[i].Position < Slots.Length)
                LeavePlaces(Slots[journal[i].Position]);
        }

        var states = CollectionsMarshal.AsSpan(journalStates);
        for (var i = 0; i < journal.Count; i++)
        {
            var (position, slot) = journal[i];
            Slots[position] = slot;
            states.Slice(i * ground.StateSize, ground.StateSize).CopyTo(States.AsSpan(position * ground.StateSize));
        }

        for (var i = 0; i < journal.Count; i++)
        {
            var position = journal[i].Position;
            if (position >= Count || Slots[position].Units == 0)
                continue;
            var slot = Slots[position];
            Index(position);
            Write(slot);
            Places.Add(slot.Activity, slot.First, slot.Units, slot.WorkStart);
        }

        Settle();
    }

    /// <summary>Moves the run at a position to another, those between closing up.</summary>
    public void Move(int from, int to)
    {
        for (var p = Math.Min(from, to); p <= Math.Max(from, to); p++)
            Touch(p);
        var slot = Slots[from];
        if (from < to)
            Array.Copy(Slots, from + 1, Slots, from, to - from);
        else
            Array.Copy(Slots, to, Slots, to + 1, from - to);
        Slots[to] = slot;
        for (var p = Math.Min(from, to); p <= Math.Max(from, to); p++)
            Index(p);
    }

    /// <summary>
    /// Inserts a run, untimed, so that it comes right before what is at a position; the nearest empty position closes up.
    /// What was at the positions from From up to, not including, To has moved or is new.
    /// </summary>
    /// <returns>Where the run is now, and the stretch.</returns>
    public (int Position, int From, int To) Insert(int position, Slot slot)
    {
        slot.WorkStart = Timetable.Unset;
        slot.Completion = 0;
        slot.Changes = 0;
        slot.Holds = 0;
        slot.Finish = long.MinValue;
        Runs++;
        var empty = NearestEmpty(position);
        if (empty < 0)
        {
            Grow(Count + 1);
            var size = ground.StateSize;
            Touch(Count);
            Slots[Count] = new Slot { Finish = long.MinValue };
            if (Count > 0)
                Array.Copy(States, (Count - 1) * size, States, Count * size, size);
            empty = Count++;
        }

        // behind the position the rest moves right, before it left
        var at = empty >= position ? position : position - 1;
        Move(empty, at);
        Slots[at] = slot;
        Index(at);
        return (at, Math.Min(at, empty), Math.Max(at, empty) + 1);
    }

    /// <summary>Gives a run other units; it is untimed then.</summary>
    public void Resize(int position, int first, int units)
    {
        Touch(position);
        Untime(position);
        Slots[position].First = first;
        Slots[position].Units = units;
        Index(position);
    }

    /// <summary>Takes a run's times away, and what they add to the totals.</summary>
    public void Untime(int position)
    {
        Touch(position);
        ref var slot = ref Slots[position];
        LeavePlaces(slot);
        Completion -= slot.Completion;
        Changes -= slot.Changes;
        Holds -= slot.Holds;
        slot.WorkStart = Timetable.Unset;
        slot.Completion = 0;
        slot.Changes = 0;
        slot.Holds = 0;
        slot.Finish = long.MinValue;
    }

    /// <summary>Removes the run at a position, which stays empty; its units must be in another run.</summary>
    public void Remove(int position)
    {
        Untime(position);
        Slots[position].Units = 0;
        Runs--;
    }

    /// <summary>Notes at which position the units of a run are.</summary>
    public void Index(int position)
    {
        ref var slot = ref Slots[position];
        var offset = ground.Net.Offset[slot.Activity] + slot.First;
        for (var k = 0; k < slot.Units; k++)
            PositionOf[offset + k] = position;
    }

    /// <summary>Notes when the units of a run start.</summary>
    public void Write(in Slot slot)
    {
        var offset = ground.Net.Offset[slot.Activity] + slot.First;
        var step = ground.Net.Step[slot.Activity];
        for (var k = 0; k < slot.Units; k++)
            Starts[offset + k] = slot.WorkStart + (k * step);
    }

    /// <summary>A copy of the runs in their order.</summary>
    public Slot[] Snapshot()
    {
        var runs = new Slot[Runs];
        for (int p = 0, i = 0; p < Count; p++)
        {
            if (Slots[p].Units > 0)
                runs[i++] = Slots[p];
        }

        return runs;
    }

    private void LeavePlaces(in Slot slot)
    {
        if (slot.Units > 0 && slot.WorkStart != Timetable.Unset)
            Places.Remove(slot.Activity, slot.First, slot.Units, slot.WorkStart);
    }

    private int NearestEmpty(int position)
    {
        for (var d = 0; d < EmptyWithin; d++)
        {
            if (position + d < Count && Slots[position + d].Units == 0)
                return position + d;
            if (position - 1 - d >= 0 && position - 1 - d < Count && Slots[position - 1 - d].Units == 0)
                return position - 1 - d;
        }

        return -1;
    }

    private void SettleBlock(int block)
    {
        var finish = long.MinValue;
        for (var p = block << BlockBits; p < Math.Min(Count, (block + 1) << BlockBits); p++)
            finish = Math.Max(finish, Slots[p].Finish);
        blockFinish[block] = finish;
    }

    private void Grow(int count)
    {
        if (count + 1 <= Slots.Length)
            return;
        var size = (count + 16) * 3 / 2;
        var slots = new Slot[size];
        Slots.CopyTo(slots, 0);
        Slots = slots;
        var states = new long[(size + 1) * ground.StateSize];
        States.CopyTo(states, 0);
        States = states;
        Array.Resize(ref touched, size + 1);
        Array.Resize(ref blockFinish, (size >> BlockBits) + 1);
    }
}
