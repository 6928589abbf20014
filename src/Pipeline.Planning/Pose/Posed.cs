using System.Collections.Immutable;
using Pipeline.Abstractions;
using Pipeline.Scheduling;
using Pipeline.Surfaces;

namespace Pipeline.Planning;

/// <summary>A batch as the scheduler sees it, with what it takes to find the way back.</summary>
internal sealed record Posed
{
    /// <summary>What the scheduler is given.</summary>
    public required Problem Problem { get; init; }

    /// <summary>What the ticks mean.</summary>
    public required Clock Clock { get; init; }

    /// <summary>What each activity is, by index.</summary>
    public required ImmutableArray<PosedActivity> Activities { get; init; }

    /// <summary>Why each wait is there, by the wait's reason.</summary>
    public required ImmutableArray<Cause> Causes { get; init; }

    /// <summary>The sittings within the horizon, the same for every painter.</summary>
    public required ImmutableArray<OpenSitting> Sittings { get; init; }

    /// <summary>The tools and what they may hold.</summary>
    public required ToolLoads Tools { get; init; }

    /// <summary>The index of the activity of a step.</summary>
    public required ImmutableArray<int> FirstOfRoute { get; init; }

    /// <summary>The activity of a step.</summary>
    public int ActivityOf(int route, int step) => FirstOfRoute[route] + step;
}

/// <summary>What an activity stands for.</summary>
/// <param name="Route">Index of the route.</param>
/// <param name="Step">The step, or null for the moment at which the model is ready.</param>
internal sealed record PosedActivity(int Route, Step? Step);

/// <summary>Why a wait is there.</summary>
internal abstract record Cause
{
    private protected abstract void Closed();

    /// <summary>One step comes after another.</summary>
    public sealed record Order(int Route, StepOrder Pair) : Cause
    {
        private protected override void Closed() { }
    }

    /// <summary>A rule asks for it.</summary>
    public sealed record Ruled(int Route, RuledWait Wait) : Cause
    {
        private protected override void Closed() { }
    }

    /// <summary>A step waits by itself until the layer below has reached a state.</summary>
    public sealed record Awaited(int Route, int Since, int Step, DryingState State) : Cause
    {
        private protected override void Closed() { }
    }

    /// <summary>A mask lies on the piece.</summary>
    public sealed record Masked(int Route, MaskSpan Mask) : Cause
    {
        private protected override void Closed() { }
    }

    /// <summary>The model is ready when its last layers can be handled or have cured, as it is wanted for.</summary>
    public sealed record Ready(int Route, int Step) : Cause
    {
        private protected override void Closed() { }
    }
}
