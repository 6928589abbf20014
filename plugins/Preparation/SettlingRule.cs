using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing;

/// <summary>A rule about preparation that has to dry or set before a step works on the area.</summary>
public abstract class SettlingRule : TradeRule
{
    /// <inheritdoc/>
    public sealed override IEnumerable<Verdict> Judge(Moment moment)
    {
        // nearly always there is nothing to say, and then nothing is made
        List<Verdict>? verdicts = null;
        foreach (var area in moment.Step.Areas)
        {
            var surface = moment.Before[area];
            foreach (var done in surface.Preparations)
            {
                if (done.Settles is { } settles && Judge(moment, surface, done) is { } settling)
                    (verdicts ??= []).Add(Wait(moment, area, done, settles, settling));
            }
        }

        return verdicts ?? Enumerable.Empty<Verdict>();
    }

    /// <summary>What there is to wait for, or null.</summary>
    /// <param name="moment">The step.</param>
    /// <param name="surface">The surface, before the step, of an area it names.</param>
    /// <param name="done">A preparation done to it that takes time to dry or set.</param>
    protected abstract Settling? Judge(Moment moment, Surface surface, PreparationDone done);

    /// <summary>True if a coat has covered the preparation: whatever worked on it has waited then.</summary>
    protected static bool IsCovered(Surface surface, PreparationDone done) => surface.Top is { } top && top.Step > done.Step;

    private static Verdict.Needs Wait(Moment moment, string area, PreparationDone done, DryingRange settles, Settling settling) => new()
    {
        Step = moment.Step.Index,
        Since = done.Step,
        Span = new Span.AtLeast(settling.Time ?? settles),
        Carrier = done.Carrier,
        IsFromLabel = done.IsFromFile,
        For = settling.For,
        Areas = [area],
        Message = settling.Message,
        Remedy = settling.Remedy,
    };

    /// <summary>What is waited for.</summary>
    /// <param name="For">What is to have happened by then: <c>dry</c>, <c>glue set</c>.</param>
    /// <param name="Message">What goes wrong sooner.</param>
    /// <param name="Remedy">What to do.</param>
    /// <param name="Time">How long, if that is not the time the preparation settles in.</param>
    protected sealed record Settling(string For, string Message, string Remedy, DryingRange? Time = null);
}
