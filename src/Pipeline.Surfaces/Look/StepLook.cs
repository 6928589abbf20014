using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Surfaces;

/// <summary>A step seen closely: what it meets and leaves, and what every rule makes of it.</summary>
/// <param name="Route">The route it is in.</param>
/// <param name="Moment">The surfaces before and after it.</param>
/// <param name="Touched">The areas it names or reaches.</param>
/// <param name="Rules">All rules, by name.</param>
/// <param name="Climate">The bench's climate.</param>
public sealed record StepLook(Route Route, Moment Moment, Sequence<string> Touched, Sequence<RuleLook> Rules, BenchClimate Climate);

/// <summary>What one rule makes of a step.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Verdicts">What it says about the step and the times it asks for; empty if it is silent.</param>
/// <param name="OfBatch">What it says about the step in view of the whole batch.</param>
/// <param name="Silence">The painter's reason why it may not speak here, or null.</param>
/// <param name="WouldSpeakIf">For a silent rule: what, were it otherwise, would make it speak; empty if nothing that was tried would.</param>
public sealed record RuleLook(
    Brought<Rule> Rule, Sequence<Verdict> Verdicts, Sequence<BatchVerdict> OfBatch, Silence? Silence, Sequence<string> WouldSpeakIf)
{
    /// <summary>True if it says nothing here and asks for no time.</summary>
    public bool IsSilent => Verdicts.IsEmpty && OfBatch.IsEmpty;
}
