using Pipeline.Abstractions;

namespace Pipeline.Plugins;

/// <summary>Why a step is wrong. Steps with the same key have one cause, and one finding says how many there are.</summary>
internal sealed record Cause(string Key, Level Level, string Message, string Remedy);

/// <summary>Gathers what has one cause in several steps of the batch.</summary>
internal static class Gathering
{
    /// <summary>One verdict per cause, at its gravest step, the first of those.</summary>
    public static IEnumerable<BatchVerdict> OncePerCause(this BatchView batch, Func<Moment, Cause?> judge)
    {
        var found = new Dictionary<string, (Cause Cause, int Route, Moment Moment, int Times)>(StringComparer.Ordinal);
        var order = new List<string>();
        for (var route = 0; route < batch.Routes.Count; route++)
        {
            foreach (var moment in batch.Routes[route].Moments)
            {
                if (judge(moment) is not { } cause)
                    continue;
                if (!found.TryGetValue(cause.Key, out var known))
                {
                    order.Add(cause.Key);
                    found[cause.Key] = (cause, route, moment, 1);
                }
                else
                {
                    found[cause.Key] = cause.Level > known.Cause.Level
                        ? (cause, route, moment, known.Times + 1)
                        : known with { Times = known.Times + 1 };
                }
            }
        }

        foreach (var key in order)
        {
            var (cause, route, moment, times) = found[key];
            yield return new BatchVerdict
            {
                Level = cause.Level,
                Place = moment.Step.Place,
                Step = new StepInBatch(route, moment.Step.Index),
                Areas = moment.Step.Areas,
                Message = times == 1 ? cause.Message : FormattableString.Invariant($"{cause.Message} So it is at {times} steps."),
                Remedy = cause.Remedy,
            };
        }
    }
}
