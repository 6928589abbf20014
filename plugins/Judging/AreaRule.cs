using Pipeline.Abstractions;

namespace Pipeline.Plugins;

/// <summary>A rule about what a step does to one area at a time: nearly always at most one thing to say about each.</summary>
public abstract class AreaRule : TradeRule
{
    /// <inheritdoc/>
    public sealed override IEnumerable<Verdict> Judge(Moment moment)
    {
        // nearly always there is nothing to say, and then nothing is made
        List<Verdict>? verdicts = null;
        foreach (var area in moment.Step.Areas)
        {
            if (Judge(moment, area, moment.Before[area]) is { } verdict)
                (verdicts ??= []).Add(verdict);
            if (Besides(moment, area, moment.Before[area]) is { } more)
                (verdicts ??= []).Add(more);
        }

        return verdicts ?? Enumerable.Empty<Verdict>();
    }

    /// <summary>What there is to say about one area, or null.</summary>
    /// <param name="moment">The step.</param>
    /// <param name="area">An area it names.</param>
    /// <param name="surface">That area's surface before the step.</param>
    protected abstract Verdict? Judge(Moment moment, string area, Surface surface);

    /// <summary>What else there is to say about it, whatever was said; null for nothing.</summary>
    private protected virtual Verdict? Besides(Moment moment, string area, Surface surface) => null;
}
