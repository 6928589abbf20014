using Pipeline.Abstractions;

namespace Pipeline.Plugins.Finishing.Rules;

/// <summary>The wait that a step asks for by itself.</summary>
public sealed class AwaitedState : AreaRule
{
    /// <inheritdoc/>
    public override string Summary => "A step that waits for a drying state comes after the paint has reached it.";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.First<Deed.Await>() is not null;

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, string area, Surface surface) =>
        surface.Top is { } top && moment.Step.First<Deed.Await>() is { } awaits
            ? moment.WaitsFor(top, awaits.State, area, $"{top.Name} is not {Saying.InWords(awaits.State)} yet.", "Leave it longer.")
            : null;
}
