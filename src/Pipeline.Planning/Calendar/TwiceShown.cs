using NodaTime;

namespace Pipeline.Planning;

/// <summary>Times that a clock shows twice in one night, because it is put back.</summary>
public static class TwiceShown
{
    /// <summary>Which of the two it is, by the zone's usual letters: <c> CEST</c>; empty for a time that comes once.</summary>
    public static string Which(ZonedDateTime moment) => Is(moment) ? $" {moment.GetZoneInterval().Name}" : "";

    /// <summary>Whether the clock shows this time a second time.</summary>
    public static bool Is(ZonedDateTime moment) => moment.Zone.MapLocal(moment.LocalDateTime).Count > 1;

    /// <summary>When the clock is put back over a time that comes twice: the instant at which it shows the hour for the second time.</summary>
    public static Instant PutBack(ZonedDateTime moment) => moment.Zone.MapLocal(moment.LocalDateTime).LateInterval.Start;
}
