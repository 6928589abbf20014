using System.Collections.Immutable;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>How close to the low figures each step is planned: what the step says, then what its route takes, then the batch's pace.</summary>
internal sealed class Pacing
{
    private readonly Pace batch;
    private readonly ImmutableHashSet<int> briskRoutes;
    private readonly ImmutableDictionary<(int Route, int Step), Pace> steps;

    public Pacing(Walked walked, Pace batch)
        : this(batch, [], Said(walked))
    {
    }

    private Pacing(Pace batch, ImmutableHashSet<int> briskRoutes, ImmutableDictionary<(int Route, int Step), Pace> steps) =>
        (this.batch, this.briskRoutes, this.steps) = (batch, briskRoutes, steps);

    /// <summary>The pace of a route where its steps say nothing, and of what dries after its last one.</summary>
    public Pace Of(int route) => briskRoutes.Contains(route) ? Pace.Brisk : batch;

    /// <summary>The pace at which a step follows on what it waits for.</summary>
    public Pace Of(int route, int step) => steps.GetValueOrDefault((route, step), Of(route));

    /// <summary>The same, with some routes brisk where their steps say nothing.</summary>
    public Pacing WithRoutes(IEnumerable<int> brisk) => new(batch, briskRoutes.Union(brisk), steps);

    /// <summary>The same, with some steps brisk.</summary>
    public Pacing WithSteps(IEnumerable<(int Route, int Step)> brisk) =>
        new(batch, briskRoutes, steps.SetItems(brisk.Select(at => KeyValuePair.Create(at, Pace.Brisk))));

    private static ImmutableDictionary<(int Route, int Step), Pace> Said(Walked walked) =>
        walked.Routes.SelectMany((route, r) => route.Route.Paces.Select(said => KeyValuePair.Create((r, said.Step), said.Pace))).ToImmutableDictionary();
}
