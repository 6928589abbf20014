namespace Pipeline.Abstractions;

/// <summary>One step of a walk, with the surfaces before and after it.</summary>
public sealed record Moment
{
    /// <summary>The model whose route is walked.</summary>
    public required Model Model { get; init; }

    /// <summary>The whole route; <see cref="Step"/> is one of it.</summary>
    public required Sequence<Step> Route { get; init; }

    /// <summary>The step.</summary>
    public required Step Step { get; init; }

    /// <summary>Every area's surface before the step.</summary>
    public required SurfaceMap Before { get; init; }

    /// <summary>Every area's surface after the step.</summary>
    public required SurfaceMap After { get; init; }

    /// <summary>What the lifecycle made of the step.</summary>
    public required Passage Passage { get; init; }

    /// <summary>Areas the step's overspray reaches besides the ones it names: unmasked, of the same pieces.</summary>
    public Sequence<string> Overspray { get; init; }

    /// <summary>Which parts hang together along the route.</summary>
    public required Pieces Pieces { get; init; }

    /// <summary>Paints and mixes of the file, in its order.</summary>
    public Sequence<Paint> Shelf { get; init; }

    /// <summary>The trade's tables as they hold for the batch.</summary>
    public Tables Tables { get; init; } = Tables.Empty;

    /// <summary>The bench's climate.</summary>
    public required BenchClimate Climate { get; init; }

    /// <summary>The air the step is done in: its own, or the bench's by day.</summary>
    public Climate Air => Step.Climate ?? Climate.Day;

    /// <summary>What protects the painter at this step, as far as the file says.</summary>
    public Protection Protection { get; init; } = Protection.Unsaid;

    /// <summary>The step that laid a layer, put a mask on or did a preparation.</summary>
    public Step At(int step) => Route[step];
}

/// <summary>A whole walk of one model's route, from the first step to the last.</summary>
public sealed record WalkedSteps(Model Model, Sequence<Moment> Moments);

/// <summary>
/// Something a careful painter would say. A rule is stateless. Derive, make the class sealed and public with a public
/// constructor without parameters, and lay a page named like the class beside it.
/// </summary>
public abstract class Rule
{
    /// <summary>Its name in kebab case, that of the class: <c>MaskLeftOn</c> is <c>mask-left-on</c>.</summary>
    public abstract string Name { get; }

    /// <summary>One sentence: what it asks for.</summary>
    public abstract string Summary { get; }

    /// <summary>The published source, or <c>common practice</c>.</summary>
    public abstract string Source { get; }

    /// <summary>
    /// True if <see cref="Judge"/> may have something to say about such a step. Other steps are not shown to it, which saves time: it is
    /// asked about each of them, so look at the step's kind and deeds and at nothing else.
    /// </summary>
    public virtual bool LooksAt(Step step) => true;

    /// <summary>Looks at one step. Called for every step of every route that <see cref="LooksAt"/> lets through, in order.</summary>
    public virtual IEnumerable<Verdict> Judge(Moment moment) => [];

    /// <summary>Looks at a whole route, once, after its last step.</summary>
    public virtual IEnumerable<Verdict> JudgeRoute(WalkedSteps route) => [];

    /// <summary>Looks at the whole batch, once, after all routes.</summary>
    public virtual IEnumerable<BatchVerdict> JudgeBatch(BatchView batch) => [];
}

/// <summary>What a rule has to say: something now, or a time to be kept.</summary>
public abstract record Verdict
{
    private protected abstract void Closed();

    /// <summary>The index of the step in the route where the change is to be made.</summary>
    public required int Step { get; init; }

    /// <summary>The areas concerned.</summary>
    public Sequence<string> Areas { get; init; }

    /// <summary>
    /// What is wrong (for a wait: what goes wrong if it is not kept), in a painter's words, with values. <c>{areas}</c> stands for
    /// <see cref="Areas"/>: verdicts of one rule on one step that differ only in their areas are put together first.
    /// </summary>
    public required string Message { get; init; }

    /// <summary>What to do.</summary>
    public required string Remedy { get; init; }

    /// <summary>
    /// True if it is told only where nothing sharper is: of something wrong whatever the clock says, where the step misses no wait; of a missed
    /// wait, where no other between the same two steps is missed and the step has no error.
    /// </summary>
    public bool GivesWay { get; init; }

    /// <summary>Steps that help to understand it, with what to say about each.</summary>
    public Sequence<Pointer> Related { get; init; }

    /// <summary>The change to the route that puts it right, where there is one thing to do and it is sure; null otherwise.</summary>
    public Mend? Mend { get; init; }

    /// <summary>Wrong whatever the clock says.</summary>
    public sealed record Says : Verdict
    {
        /// <summary>How grave.</summary>
        public required Level Level { get; init; }

        private protected override void Closed() { }
    }

    /// <summary>A time to be kept between an earlier step and <see cref="Verdict.Step"/>.</summary>
    public sealed record Needs : Verdict
    {
        /// <summary>The index of the earlier step.</summary>
        public required int Since { get; init; }

        /// <summary>True to count from the start of the earlier step's work on a unit, false from its finish.</summary>
        public bool SinceStart { get; init; }

        /// <summary>True to count to the finish of the later step's work on a unit, false to its start.</summary>
        public bool ToFinish { get; init; }

        /// <summary>How long.</summary>
        public required Span Span { get; init; }

        /// <summary>What leaves the film, for the climate's part in the time.</summary>
        public Carrier Carrier { get; init; }

        /// <summary>The gravest it can get: a warning for what is only risky.</summary>
        public Level Gravest { get; init; } = Level.Error;

        /// <summary>What is waited for, to show on the plan: <c>mask-safe</c>, <c>glue set</c>.</summary>
        public required string For { get; init; }

        /// <summary>True if label or step gives the figure, false if it is a default.</summary>
        public bool IsFromLabel { get; init; }

        private protected override void Closed() { }
    }
}

/// <summary>A step that helps to understand a verdict.</summary>
public sealed record Pointer(int Step, string Message);

/// <summary>How long a time has to be or may be, at the standard climate.</summary>
public abstract record Span
{
    private protected abstract void Closed();

    /// <summary>At least. Below the low figure an error, up to <see cref="DryingRange.Comfortable"/> a warning.</summary>
    public sealed record AtLeast(DryingRange Time) : Span
    {
        private protected override void Closed() { }
    }

    /// <summary>At most. Beyond the first time a warning; beyond the second, if there is one, an error. Not changed by climate.</summary>
    public sealed record AtMost(Drying Time, Drying? HardLimit = null) : Span
    {
        private protected override void Closed() { }
    }

    /// <summary>Either within a time, while the layer is still open, or after it has dried through. Plans wait for the latter.</summary>
    public sealed record WithinOrAfter(Drying Within, DryingRange After) : Span
    {
        private protected override void Closed() { }
    }
}
