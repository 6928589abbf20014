using System.Collections.Immutable;

namespace Pipeline.Scheduling;

/// <summary>
/// A scheduling problem with no trade in it: lots of units that workers take through activities in their open hours,
/// with least and greatest waits, tools that hold a load, places that fill up, and due times.
/// All times are whole ticks from an origin that only the caller knows.
/// </summary>
public sealed record Problem
{
    /// <summary>The people whose hands do attended work. May be empty only when no activity is attended.</summary>
    public ImmutableArray<Worker> Workers { get; init; } = [];

    /// <summary>Tools that hold one load at a time and must be cleaned out between loads.</summary>
    public ImmutableArray<Tool> Tools { get; init; } = [];

    /// <summary>Things of limited number without open hours: drying places, machines that run by themselves.</summary>
    public ImmutableArray<Place> Places { get; init; } = [];

    /// <summary>What is to be done. An activity is known by its index.</summary>
    public ImmutableArray<Activity> Activities { get; init; } = [];

    /// <summary>Least and greatest times between activities.</summary>
    public ImmutableArray<Wait> Waits { get; init; } = [];

    /// <summary>When activities should be finished, and how much a tick of lateness weighs.</summary>
    public ImmutableArray<Due> Dues { get; init; } = [];

    /// <summary>What is best, most important first. Dues always come before all of these.</summary>
    public ImmutableArray<Aim> Aims { get; init; } = [Aim.FinishSoon, Aim.FewChanges, Aim.ShortHolds, Aim.EvenDays];
}

/// <summary>One person. Attended work fits wholly inside one open interval of the calendar.</summary>
/// <param name="Name">For reasons and messages.</param>
/// <param name="Open">When the worker is at hand.</param>
/// <param name="MostPerDay">Cap on attended ticks in any one day of the calendar, all its open intervals together; null for none.</param>
public sealed record Worker(string Name, Calendar Open, long? MostPerDay = null);

/// <summary>A tool of which there may be several alike. A run that uses it holds one of them with one load.</summary>
/// <param name="Name">For reasons and messages.</param>
/// <param name="Count">How many there are, at least 1.</param>
/// <param name="Loads">Names of the loads; a load is known by its index.</param>
/// <param name="CleanOut">Attended ticks to go from load [from] to load [to]; zero on the diagonal.</param>
/// <param name="Fill">Attended ticks to load a clean tool; usually zero.</param>
/// <param name="CloseDown">Attended ticks to clean load [i] out at the end of the open interval in which it was last used.
/// The worker who used the tool last does it, once, inside the same interval, until the end of which the tool is put away; then it is clean.</param>
public sealed record Tool(
    string Name,
    int Count,
    ImmutableArray<string> Loads,
    ImmutableArray<ImmutableArray<long>> CleanOut,
    ImmutableArray<long> Fill,
    ImmutableArray<long> CloseDown);

/// <summary>A number of like places without hours, such as a drying rack.</summary>
public sealed record Place(string Name, int Capacity);

/// <summary>What one activity does to a lot of units.</summary>
public sealed record Activity
{
    /// <summary>For reasons and messages.</summary>
    public required string Name { get; init; }

    /// <summary>
    /// The lot whose units these are: unit k of every activity of a lot is the same piece, and takes a place once, however many areas of
    /// it are wet at a time. Null for a lot of its own.
    /// </summary>
    public int? Lot { get; init; }

    /// <summary>How many units go through, at least 1. Units are always taken in the order 0, 1, 2 …</summary>
    public int Units { get; init; } = 1;

    /// <summary>Attended ticks per unit; for <see cref="Together"/>, for the whole lot. Zero if nothing is attended.</summary>
    public long PerUnit { get; init; }

    /// <summary>Attended ticks once at the start of every run.</summary>
    public long SetUp { get; init; }

    /// <summary>Attended ticks once at the end of every run.</summary>
    public long PutAway { get; init; }

    /// <summary>Ticks a unit runs on by itself after its attended time; it is finished only then. May span closed hours.</summary>
    public long Unattended { get; init; }

    /// <summary>All units are done at once, in one run.</summary>
    public bool Together { get; init; }

    /// <summary>Whether a lot may be parted between units; after a part, set-up and put-away are paid again.</summary>
    public bool MayBeParted { get; init; } = true;

    /// <summary>Indexes of the workers who may do it; empty means any.</summary>
    public ImmutableArray<int> Workers { get; init; } = [];

    /// <summary>The tool and load it needs, or null.</summary>
    public ToolUse? Tool { get; init; }

    /// <summary>
    /// Places each unit takes while it is worked on and runs unattended, and for a time after it has finished; each place once.
    /// All activities of a <see cref="Lot"/> that use a place take as much of it per unit.
    /// </summary>
    public ImmutableArray<PlaceUse> Places { get; init; } = [];

    /// <summary>No run may start before this tick.</summary>
    public long NotBefore { get; init; }

    /// <summary>The tick at which the (unparted) run must start, or null.</summary>
    public long? PinnedStart { get; init; }

    /// <summary>Runs that have already happened or are under way, in unit order from unit 0. They are facts and not judged.</summary>
    public ImmutableArray<Run> Past { get; init; } = [];

    /// <summary>When the own work of a unit starts in a run that has it.</summary>
    public long StartIn(Run run, int unit) => run.WorkStart + (Together ? 0 : (unit - run.FirstUnit) * PerUnit);

    /// <summary>True if a worker's hands are needed at all.</summary>
    public bool IsAttended => PerUnit > 0 || SetUp > 0 || PutAway > 0 || Tool is not null;
}

/// <summary>A tool and the load it must hold.</summary>
public sealed record ToolUse(int Tool, int Load);

/// <summary>Places a unit takes: from the start of its own work until <paramref name="Afterwards"/> ticks after its finish.</summary>
public sealed record PlaceUse(int Place, int PerUnit, long Afterwards);

/// <summary>The edge of a unit's (or lot's) interval a wait is measured from or to.</summary>
public enum Edge
{
    /// <summary>The start of the unit's own work, after clean-out and set-up.</summary>
    Start,

    /// <summary>The finish of the unit's own work, including what runs unattended.</summary>
    Finish,
}

/// <summary>Whether a wait holds for each unit or for the lot.</summary>
public enum Scope
{
    /// <summary>For each unit k: unit k of one to unit k of the other. Both have the same number of units.</summary>
    UnitByUnit,

    /// <summary>From the last unit of the one to the first of the other for a least wait; from the first of the one to the last of the other for a greatest.</summary>
    WholeLot,
}

/// <summary>
/// A least and/or greatest time from an edge of one activity to an edge of another.
/// </summary>
/// <param name="From">Index of the earlier activity.</param>
/// <param name="FromEdge">Which edge of it.</param>
/// <param name="To">Index of the later activity.</param>
/// <param name="ToEdge">Which edge of it.</param>
/// <param name="Least">At least this many ticks, or null; may be negative.</param>
/// <param name="Greatest">At most this many ticks, or null.</param>
/// <param name="Scope">Unit by unit, or the whole lot.</param>
/// <param name="HoldWeight">Above zero, the elapsed time is unpleasant and kept short when nothing better is lost (a mask on).</param>
/// <param name="Reason">The caller's index of what explains it; comes back in the reasons. −1 if none.</param>
public sealed record Wait(
    int From,
    Edge FromEdge,
    int To,
    Edge ToEdge,
    long? Least,
    long? Greatest,
    Scope Scope = Scope.UnitByUnit,
    double HoldWeight = 0,
    int Reason = -1);

/// <summary>A wish that an activity (all units, with what runs unattended and <paramref name="Afterwards"/> ticks more) be finished by a time.</summary>
public sealed record Due(int Activity, long By, double WeightPerTick = 1, long Afterwards = 0, bool IsHard = false);

/// <summary>What makes one schedule better than another, after the due times.</summary>
public enum Aim
{
    /// <summary>
    /// The last activity finishes soonest. Two finishes in the same open stretch of the workers' hours, or in the closed hours
    /// after it, count as alike until all other aims are; then the earlier tick is better. If fewest changes come next, they and
    /// the finish inside the stretch are weighed against each other, a tick of the closed hours after it as a sixtieth. Without workers,
    /// or where the hours are one unbroken stretch, every tick counts at once.
    /// </summary>
    FinishSoon,

    /// <summary>Fewest clean-outs and set-ups.</summary>
    FewChanges,

    /// <summary>Waits with a hold weight are shortest.</summary>
    ShortHolds,

    /// <summary>Open intervals are evenly filled.</summary>
    EvenDays,
}
