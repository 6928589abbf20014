using System.Text;
using Pipeline.Abstractions;

namespace Pipeline.Surfaces.Lifecycle;

/// <summary>The lifecycle as a picture, drawn from what the machine says about itself.</summary>
public static class LifecycleDiagram
{
    /// <summary>A Markdown page with a Mermaid state diagram.</summary>
    public static string Page()
    {
        var page = new StringBuilder();
        page.Append("# The lifecycle of a model\n\n");
        page.Append("Generated from the state machine in `src/Pipeline.Surfaces/Lifecycle`; do not edit.\n\n");
        page.Append("A step is permitted if the surface permits it: what it names can be reached (neither masked nor hidden by a join), a mask to be\n");
        page.Append("taken off is on, an effect to be cleaned back is there. A step that is not permitted becomes a finding.\n\n");
        page.Append("```mermaid\n").Append(Mermaid()).Append("```\n");
        return page.ToString();
    }

    /// <summary>The diagram in Mermaid's notation, one line per pair of states.</summary>
    public static string Mermaid()
    {
        var text = new StringBuilder("stateDiagram-v2\n");
        var info = new ModelLifecycle().Describe();
        text.Append("    [*] --> ").Append(info.InitialState.UnderlyingState).Append('\n');
        foreach (var state in info.States.OrderBy(state => (LifecycleState)state.UnderlyingState))
        {
            var byNext = state.FixedTransitions
                .GroupBy(transition => (LifecycleState)transition.DestinationState.UnderlyingState)
                .OrderBy(group => group.Key);
            foreach (var group in byNext)
            {
                var kinds = group.Select(transition => (StepKind)transition.Trigger.UnderlyingTrigger).Order().Select(ModelLifecycle.Word);
                var condition = group.First().GuardConditionsMethodDescriptions.Last().Description;
                text.Append(CultureFree($"    {state.UnderlyingState} --> {group.Key}: {string.Join(", ", kinds)} [{condition}]\n"));
            }
        }

        return text.Append("    Finished --> [*]\n").ToString();
    }

    private static string CultureFree(FormattableString text) => FormattableString.Invariant(text);
}
