using NodaTime;

namespace Pipeline.Tests.Units.Engine;

/// <summary>A clock that stands still.</summary>
internal sealed class StillClock(Instant now) : IClock
{
    public Instant GetCurrentInstant() => now;
}
