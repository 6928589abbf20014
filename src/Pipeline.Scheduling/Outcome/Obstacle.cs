using System.Collections.Immutable;

namespace Pipeline.Scheduling;

/// <summary>One plain fact that stands in the way of a schedule.</summary>
public abstract record Obstacle
{
    private protected abstract void Close();

    /// <summary>The smallest run of an activity fits into no open interval of anybody who may do it.</summary>
    /// <param name="Activity">Index of the activity.</param>
    /// <param name="Needed">Attended ticks of its smallest run: filling the tool, set-up, work, putting away and close-down.</param>
    /// <param name="Longest">Ticks of the longest usable open interval.</param>
    public sealed record FitsNoInterval(int Activity, long Needed, long Longest) : Obstacle
    {
        private protected override void Close() { }
    }

    /// <summary>The smallest run of an activity is more than anybody who may do it may do in a day.</summary>
    /// <param name="Activity">Index of the activity.</param>
    /// <param name="Needed">Attended ticks of its smallest run: filling the tool, set-up, work, putting away and close-down.</param>
    /// <param name="Most">The greatest cap of those who may do it.</param>
    public sealed record FitsNoDay(int Activity, long Needed, long Most) : Obstacle
    {
        private protected override void Close() { }
    }

    /// <summary>A unit needs more of a place than there is.</summary>
    public sealed record FitsNoPlace(int Activity, int Place, int Needed, int Capacity) : Obstacle
    {
        private protected override void Close() { }
    }

    /// <summary>Waits contradict each other: taken around in a ring they ask a time to be later than itself.</summary>
    /// <param name="Waits">Indexes of the waits in the ring.</param>
    /// <param name="Excess">By how many ticks they contradict each other.</param>
    public sealed record WaitsContradict(ImmutableArray<int> Waits, long Excess) : Obstacle
    {
        private protected override void Close() { }
    }

    /// <summary>A pinned start, or what has already happened, cannot be kept.</summary>
    /// <param name="Activity">Index of the pinned activity, or of the one that has to follow on what has happened.</param>
    /// <param name="Wait">The wait that is broken, or null if it is the open hours or something else that is pinned.</param>
    /// <param name="By">Ticks by which it is missed, zero if that has no meaning.</param>
    public sealed record PinContradicts(int Activity, int? Wait, long By) : Obstacle
    {
        private protected override void Close() { }
    }

    /// <summary>The open hours end before all is done.</summary>
    /// <param name="Activity">The first activity that finds no time.</param>
    /// <param name="Ticks">Attended ticks that lie outside the open hours, this and all that comes after it.</param>
    /// <param name="Activities">How many activities find no time.</param>
    public sealed record OpenHoursEnd(int Activity, long Ticks, int Activities) : Obstacle
    {
        private protected override void Close() { }
    }

    /// <summary>A greatest wait could not be kept together with the open hours.</summary>
    /// <param name="Wait">Index of the wait.</param>
    public sealed record GreatestWaitTooShort(int Wait) : Obstacle
    {
        private protected override void Close() { }
    }

    /// <summary>A hard due time is missed.</summary>
    /// <param name="Due">Index of the due time.</param>
    /// <param name="Earliest">The earliest finish found.</param>
    /// <param name="NotBefore">No schedule finishes it before this tick; if that is after the due time, it is proved.</param>
    public sealed record HardDueMissed(int Due, long Earliest, long NotBefore) : Obstacle
    {
        private protected override void Close() { }
    }

    /// <summary>The exact solver proved that there is no schedule, without naming one cause.</summary>
    public sealed record ProvedImpossible : Obstacle
    {
        private protected override void Close() { }
    }

    /// <summary>No schedule was found with this effort; there may be one.</summary>
    public sealed record NotFound : Obstacle
    {
        private protected override void Close() { }
    }
}
