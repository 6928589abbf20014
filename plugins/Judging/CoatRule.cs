using Pipeline.Abstractions;

namespace Pipeline.Plugins;

/// <summary>A rule about a coat and what it lands on, area by area: named, neither masked nor hidden.</summary>
public abstract class CoatRule : AreaRule
{
    /// <inheritdoc/>
    public sealed override bool LooksAt(Step step) => step.Kind == StepKind.Coat && step.Coat() is { } coat && LooksAt(coat);

    /// <summary>True if the coat is of the kind the rule is about, wherever it lands.</summary>
    protected virtual bool LooksAt(Layer coat) => true;

    /// <inheritdoc/>
    protected sealed override Verdict? Judge(Moment moment, string area, Surface surface) =>
        surface is { IsMasked: false, IsHidden: false } ? Judge(moment, moment.Step.Coat()!, area, surface) : null;

    private protected sealed override Verdict? Besides(Moment moment, string area, Surface surface) =>
        surface is { IsMasked: false, IsHidden: false } ? Besides(moment, moment.Step.Coat()!, area, surface) : null;

    /// <summary>What else there is to say about it, whatever was said; null for nothing.</summary>
    private protected virtual Verdict? Besides(Moment moment, Layer coat, string area, Surface surface) => null;

    /// <summary>What there is to say about the coat on one area, or null.</summary>
    /// <param name="moment">The step.</param>
    /// <param name="coat">What it lays.</param>
    /// <param name="area">An area it lands on.</param>
    /// <param name="surface">That area's surface before the coat.</param>
    protected abstract Verdict? Judge(Moment moment, Layer coat, string area, Surface surface);
}
