using Pipeline.Abstractions;

namespace Pipeline.Planning;

/// <summary>How long a wait is at a bench, in minutes, climate taken into account. Limits that are not there are null.</summary>
/// <param name="LowMinutes">Below this is an error.</param>
/// <param name="ComfortableMinutes">Below this is a warning.</param>
/// <param name="HighMinutes">The cautious figure, for messages.</param>
/// <param name="WithinMinutes">Up to this it does not matter, the layer being still open.</param>
/// <param name="LimitMinutes">Beyond this is a warning.</param>
/// <param name="HardLimitMinutes">Beyond this is an error.</param>
/// <param name="Factor">By how much the bench's climate stretches it.</param>
public sealed record Waiting(
    double? LowMinutes,
    double? ComfortableMinutes,
    double? HighMinutes,
    double? WithinMinutes,
    double? LimitMinutes,
    double? HardLimitMinutes,
    double Factor)
{
    /// <summary>Most that climate can stretch a drying time where the air is too damp for any figure.</summary>
    private const double Slowest = 4;

    /// <summary>True if the bench is too damp for the figure to mean anything.</summary>
    public bool IsTooDamp { get; private init; }

    /// <summary>The wait a rule asks for, at a bench.</summary>
    public static Waiting Of(Verdict.Needs needs, BenchClimate climate)
    {
        ArgumentNullException.ThrowIfNull(needs);
        ArgumentNullException.ThrowIfNull(climate);
        return needs.Span switch
        {
            Span.AtLeast least => After(least.Time, needs.Carrier, climate, null),
            Span.WithinOrAfter either => After(either.After, needs.Carrier, climate, either.Within.Minutes),
            Span.AtMost most => new(null, null, null, null, most.Time.Minutes, most.HardLimit?.Minutes, 1),
            _ => throw new InvalidOperationException($"A span of kind {needs.Span.GetType().Name} is not known here."),
        };
    }

    private static Waiting After(DryingRange range, Carrier carrier, BenchClimate climate, double? within)
    {
        var factor = DryingFactor.For(carrier, climate, range.Comfortable);
        var time = range * (factor ?? Slowest);
        return new(time.Low.Minutes, time.Comfortable.Minutes, time.High.Minutes, within, null, null, factor ?? Slowest) { IsTooDamp = factor is null };
    }
}
