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

    /// <summary>The sittings within the horizon, the same for every painter; where something has been done on the first day, all of that day.</summary>
    public required ImmutableArray<OpenSitting> Sittings { get; init; }

    /// <summary>How many of the sittings are over when the plan begins.</summary>
    public int SittingsOver => Sittings.Count(sitting => sitting.End <= Clock.Origin);

    /// <summary>Greatest waits since done work that have been lengthened because nothing can keep them any more, by index.</summary>
    public ImmutableHashSet<int> Overdue { get; init; } = [];

    /// <summary>Whether the painters work less in a day than the bench lets them, to keep the days even.</summary>
    public required bool IsEvened { get; init; }

    /// <summary>The tools and what they may hold.</summary>
    public required ToolLoads Tools { get; init; }

    /// <summary>Which activities the steps of each route are.</summary>
    public required ImmutableArray<PosedRoute> Routes { get; init; }
}

/// <summary>
/// Which activities the steps of a route are: one for each pass, all in the order of the route, and then the one at which the model is ready.
/// </summary>
/// <param name="FirstPasses">The activity of each step's first pass, by step; empty for a route without steps.</param>
/// <param name="Ready">The activity at which the model is ready; of a route without steps there is none.</param>
internal sealed record PosedRoute(ImmutableArray<int> FirstPasses, int Ready)
{
    /// <summary>All activities of its steps.</summary>
    public IEnumerable<int> Activities => FirstPasses.IsEmpty ? [] : Enumerable.Range(FirstPasses[0], Ready - FirstPasses[0]);

    /// <summary>The activity of the first pass of a step.</summary>
    public int First(int step) => FirstPasses[step];

    /// <summary>The activity of the last pass of a step.</summary>
    public int Last(int step) => (step + 1 < FirstPasses.Length ? FirstPasses[step + 1] : Ready) - 1;

    /// <summary>The activity on which an edge of a step hangs: it starts with its first pass and is finished with its last.</summary>
    public int At(int step, Edge edge) => edge == Edge.Start ? First(step) : Last(step);

    /// <summary>The activities of a step, pass by pass.</summary>
    public IEnumerable<int> Of(int step) => Enumerable.Range(First(step), Last(step) - First(step) + 1);

    /// <summary>True if an activity is a pass of one of its steps.</summary>
    public bool Has(int activity) => !FirstPasses.IsEmpty && activity >= FirstPasses[0] && activity < Ready;
}

/// <summary>What an activity stands for.</summary>
/// <param name="Route">Index of the route.</param>
/// <param name="Step">The step, or null for the moment at which the model is ready.</param>
/// <param name="Pass">Which pass of the step, from 0.</param>
internal sealed record PosedActivity(int Route, Step? Step, int Pass = 0);

/// <summary>Why a wait is there.</summary>
internal abstract record Cause
{
    private protected abstract void Closed();

    /// <summary>One step comes after another.</summary>
    public sealed record Order(int Route, StepOrder Pair) : Cause
    {
        private protected override void Closed() { }
    }

    /// <summary>A coat waits until the one before it, of the same step, is recoatable.</summary>
    public sealed record NextCoat(int Route, int Step) : Cause
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
