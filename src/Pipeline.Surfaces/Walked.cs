using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Surfaces;

/// <summary>A batch whose routes have been walked: surfaces, order, waits, findings.</summary>
public sealed record Walked(Batch Batch, Sequence<WalkedRoute> Routes, Sequence<Finding> Findings);

/// <summary>One route walked.</summary>
/// <param name="Route">The route.</param>
/// <param name="Moments">One per step, in file order.</param>
/// <param name="Order">Pairs of steps that keep their order; transitively reduced, earlier index first.</param>
/// <param name="Waits">Times to be kept, silenced ones left out.</param>
/// <param name="Masks">Every mask from on to off, in order of putting on.</param>
public sealed record WalkedRoute(
    Route Route,
    Sequence<Moment> Moments,
    Sequence<StepOrder> Order,
    Sequence<RuledWait> Waits,
    Sequence<MaskSpan> Masks);

/// <summary>Step <paramref name="Earlier"/> comes before step <paramref name="Later"/>, unit by unit.</summary>
/// <param name="Earlier">Index in the route.</param>
/// <param name="Later">Index in the route.</param>
/// <param name="Why">In the painter's words: <c>both touch the cloak</c>.</param>
public sealed record StepOrder(int Earlier, int Later, string Why);

/// <summary>A time to be kept and the rule that asks for it.</summary>
public sealed record RuledWait(string Rule, Verdict.Needs Needs);

/// <summary>A mask from the step that puts it on to the one that takes it off.</summary>
/// <param name="Name">The mask's name.</param>
/// <param name="Material">What it is made of.</param>
/// <param name="Areas">The areas under it.</param>
/// <param name="OnStep">Index of the step that puts it on.</param>
/// <param name="OffStep">Index of the step that takes it off, or null if none does.</param>
public sealed record MaskSpan(string Name, MaskMaterial Material, Sequence<string> Areas, int OnStep, int? OffStep);
