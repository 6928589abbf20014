using NodaTime;
using Pipeline.Abstractions;

namespace Pipeline.Planning;

/// <summary>
/// Between instants and the scheduler's ticks. A tick is half a minute, so that short work on many small pieces is not rounded out of
/// proportion; tick 0 is the moment from which is planned, moved on to a whole minute.
/// Times that must be long enough are rounded up, those that must not be too long are rounded down.
/// </summary>
internal sealed class Clock
{
    private const int TicksPerMinute = 2;

    // Ninety-five years: longer than any look ahead, and short of where calendars end.
    private const double MostTicks = 1e8;

    public Clock(Instant from)
    {
        var minutes = from.ToUnixTimeTicks() / (double)NodaConstants.TicksPerMinute;
        Origin = Instant.FromUnixTimeTicks((long)Math.Ceiling(minutes) * NodaConstants.TicksPerMinute);
    }

    /// <summary>Tick 0.</summary>
    public Instant Origin { get; }

    /// <summary>The first tick that is not before an instant.</summary>
    public long TickAt(Instant instant) => (long)Math.Ceiling((instant - Origin).TotalMinutes * TicksPerMinute);

    /// <summary>The instant of a tick.</summary>
    public Instant InstantAt(long tick) => Origin + Duration.FromSeconds(tick * 60L / TicksPerMinute);

    /// <summary>The instant of a tick on a clock that shows whole minutes: the minute it lies in.</summary>
    public Instant MinuteAt(long tick) => Origin + Duration.FromMinutes(Math.Floor(tick / (double)TicksPerMinute));

    /// <summary>Ticks that are at least so many minutes.</summary>
    public static long AtLeast(double minutes) => (long)Math.Min(MostTicks, Math.Ceiling((minutes * TicksPerMinute) - 1e-9));

    /// <summary>Ticks that are at most so many minutes.</summary>
    public static long AtMost(double minutes) => (long)Math.Min(MostTicks, Math.Floor((minutes * TicksPerMinute) + 1e-9));

    /// <summary>Attended time in ticks, rounded up.</summary>
    public static long Of(Attended time) => AtLeast(time.Minutes);

    /// <summary>Minutes of so many ticks.</summary>
    public static double Minutes(long ticks) => ticks / (double)TicksPerMinute;

    /// <summary>Whole minutes of so many ticks, rounded up.</summary>
    public static int WholeMinutes(long ticks) => (int)((ticks + TicksPerMinute - 1) / TicksPerMinute);
}
