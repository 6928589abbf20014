namespace Pipeline.Abstractions;

/// <summary>
/// A rule about what only a plan shows: how full sittings are, when pieces are ready. It is asked about every plan, and before there is one
/// about as much as the painter has decided. Stateless like any <see cref="Rule"/>; it looks at plans and at nothing else.
/// </summary>
public abstract class PlanRule : Rule
{
    /// <summary>Looks at a plan, once.</summary>
    public abstract IEnumerable<BatchVerdict> JudgePlan(PlanView plan);

    /// <inheritdoc/>
    public sealed override IEnumerable<Verdict> Judge(Moment moment) => [];

    /// <inheritdoc/>
    public sealed override IEnumerable<Verdict> JudgeRoute(WalkedSteps route) => [];

    /// <inheritdoc/>
    public sealed override IEnumerable<BatchVerdict> JudgeBatch(BatchView batch) => [];
}

/// <summary>A plan as a rule sees it, or as much of one as the painter has decided. All times are the bench's own.</summary>
public sealed record PlanView
{
    /// <summary>The batch it is a plan for.</summary>
    public required BatchView Batch { get; init; }

    /// <summary>True for a plan; false if there is none yet and only decided starts are known.</summary>
    public required bool IsWhole { get; init; }

    /// <summary>The share of each sitting that is to stay free.</summary>
    public required Share Slack { get; init; }

    /// <summary>The sittings in which something is done, in order of their start.</summary>
    public Sequence<SittingView> Sittings { get; init; }

    /// <summary>When each model is ready, in file order; without a plan, only models with a decided start.</summary>
    public Sequence<ReadyView> Ready { get; init; }
}

/// <summary>A stretch of one painter at the bench.</summary>
/// <param name="Painter">Who sits.</param>
/// <param name="From">When it opens.</param>
/// <param name="To">When it closes.</param>
/// <param name="OpenMinutes">How long that really is, clock changes included.</param>
/// <param name="Work">What is done, in order of start.</param>
public sealed record SittingView(string Painter, DateTime From, DateTime To, double OpenMinutes, Sequence<WorkView> Work)
{
    /// <summary>Minutes with the hands busy, set-ups and clean-outs included.</summary>
    public double UsedMinutes => Work.Sum(work => work.Minutes);
}

/// <summary>One stretch of work.</summary>
/// <param name="Step">The step; null for cleaning a tool at the end.</param>
/// <param name="From">When it starts.</param>
/// <param name="To">When the hands are free again.</param>
/// <param name="Minutes">How long that is.</param>
/// <param name="CanWaitUntil">How late it could start without anything else having to start later, or null if it cannot be moved.</param>
public sealed record WorkView(StepInBatch? Step, DateTime From, DateTime To, double Minutes, DateTime? CanWaitUntil = null);

/// <summary>When a model is ready for what it is for: for display when it can be handled, for play or packing when it has cured.</summary>
public sealed record ReadyView
{
    /// <summary>The step that it is ready last after.</summary>
    public required StepInBatch Last { get; init; }

    /// <summary>When the hands are done with it.</summary>
    public required DateTime WorkDone { get; init; }

    /// <summary>When it is ready by the figures the plan is laid to; without a plan, by the low ones.</summary>
    public required DateTime Ready { get; init; }

    /// <summary>When nobody would doubt it. Not before <see cref="Ready"/>.</summary>
    public required DateTime Comfortable { get; init; }

    /// <summary>By when it should be, and where the file says so; null if it does not.</summary>
    public DueTime? Due { get; init; }

    /// <summary>By how many minutes it is ready after its due time, clock changes included, rounded up; 0 if it is not.</summary>
    public int LateMinutes { get; init; }

    /// <summary>What keeps it from being ready earlier, in whole sentences; empty without a plan, and if it is ready by its due time.</summary>
    public string WhyNotEarlier { get; init; } = "";

    /// <summary>What would help it to be ready earlier, in a whole sentence; empty where no more than the usual can be said.</summary>
    public string WhatHelps { get; init; } = "";
}

/// <summary>A due time.</summary>
/// <param name="By">When.</param>
/// <param name="Place">Where the file says it.</param>
public sealed record DueTime(DateTime By, Place Place);
