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
                if (done.Settles is { } settles && Judge(moment, area, surface, done, settles) is { } wait)
                    (verdicts ??= []).Add(wait with { IsFromLabel = done.IsFromFile });
            }
        }

        return verdicts ?? Enumerable.Empty<Verdict>();
    }

    /// <summary>What there is to wait for, or null.</summary>
    /// <param name="moment">The step.</param>
    /// <param name="area">An area it names.</param>
    /// <param name="surface">That area's surface before the step.</param>
    /// <param name="done">A preparation done to it.</param>
    /// <param name="settles">How long that takes to dry or set.</param>
    protected abstract Verdict.Needs? Judge(Moment moment, string area, Surface surface, PreparationDone done, DryingRange settles);

    /// <summary>True if a coat has covered the preparation: whatever worked on it has waited then.</summary>
    protected static bool IsCovered(Surface surface, PreparationDone done) => surface.Top is { } top && top.Step > done.Step;
}
