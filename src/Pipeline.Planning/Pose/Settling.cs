using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>How long what a step leaves takes to reach a state, by itself, at the bench.</summary>
internal static class Settling
{
    /// <summary>Minutes from the finish of a step until all its layers have reached a state; zero if nothing dries. For handling, joints and damp count too.</summary>
    public static double Minutes(Step step, DryingState state, BenchClimate climate, Pace pace)
    {
        double longest = 0;
        foreach (var deed in step.Deeds)
        {
            var (time, carrier) = deed switch
            {
                Deed.Lay lay => (lay.Layer.TimeTo(state), lay.Layer.Family?.Carrier ?? Carrier.None),
                Deed.Prepare prepare when state == DryingState.Handleable => (prepare.Settles, prepare.Carrier),
                Deed.Join join when state == DryingState.Handleable => (join.Settles, join.Carrier),
                Deed.Strip strip when state == DryingState.Handleable => (strip.Settles, strip.Dissolves),
                _ => (null, Carrier.None),
            };
            if (time is { } range)
                longest = Math.Max(longest, Minutes(range, carrier, climate, pace));
        }

        return longest;
    }

    /// <summary>A range at the bench, to its comfortable end or to the low figure.</summary>
    public static double Minutes(DryingRange range, Carrier carrier, BenchClimate climate, Pace pace) =>
        (pace == Pace.Brisk ? range.Low : range.Comfortable).Minutes * (DryingFactor.For(carrier, climate, range.Comfortable) ?? 1);
}
