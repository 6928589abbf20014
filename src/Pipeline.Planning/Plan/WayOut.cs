using NodaTime;
using Pipeline.Abstractions;

namespace Pipeline.Planning;

/// <summary>A change with which the batch was planned anew because its due times could not be met, and what came of it.</summary>
/// <param name="Change">What is changed.</param>
/// <param name="Words">The change in words: <c>one more sitting, Sun 6 Dec 15:00–17:15</c>.</param>
/// <param name="Ready">When the last piece is ready then.</param>
/// <param name="LateMinutes">The latest that any model is after its due time, in minutes, rounded up; 0 if all are in time.</param>
/// <param name="FillsSittings">True if the sittings are then filled beyond what the bench's slack leaves free.</param>
public sealed record WayOut(Change Change, string Words, ZonedDateTime Ready, int LateMinutes, bool FillsSittings);

/// <summary>Something that could be done differently.</summary>
public abstract record Change
{
    private protected abstract void Closed();

    /// <summary>Some steps follow at the low drying figures (<c>pace: brisk</c>); all of the batch if none are named.</summary>
    public sealed record Brisk(Sequence<BriskStep> Steps) : Change
    {
        private protected override void Closed() { }
    }

    /// <summary>More time at the bench.</summary>
    public sealed record MoreSittings(Sequence<SittingTime> Sittings) : Change
    {
        private protected override void Closed() { }
    }

    /// <summary>A further painter, who does everything, in the sittings of some days.</summary>
    public sealed record OneMorePainter(Sequence<LocalDate> Days) : Change
    {
        private protected override void Closed() { }
    }

    /// <summary>A model is left for later.</summary>
    public sealed record LeaveOut(string Model) : Change
    {
        private protected override void Closed() { }
    }
}

/// <summary>A stretch of time at the bench.</summary>
public sealed record SittingTime(ZonedDateTime From, ZonedDateTime To)
{
    /// <summary>How long it lasts.</summary>
    public long Minutes => (long)(To.ToInstant() - From.ToInstant()).TotalMinutes;
}

/// <summary>A step that follows briskly.</summary>
/// <param name="Model">Whose.</param>
/// <param name="Step">In words: <c>varnish the suit</c>.</param>
/// <param name="Place">Where the file says it.</param>
public sealed record BriskStep(string Model, string Step, Place Place);
