using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>What came of planning.</summary>
public abstract record PlanOutcome
{
    private protected abstract void Closed();

    /// <summary>A plan.</summary>
    /// <param name="Plan">The plan.</param>
    /// <param name="Reasons">Answers why it is as it is.</param>
    public sealed record Planned(Plan Plan, PlanReasons Reasons) : PlanOutcome
    {
        private protected override void Closed() { }
    }

    /// <summary>No plan satisfies the constraints; each reason is a finding of level error at the place that could be changed.</summary>
    public sealed record NoPlan(Sequence<Finding> Reasons) : PlanOutcome
    {
        private protected override void Closed() { }
    }
}

/// <summary>Days, sittings and tasks with clock times, and what a painter wants to know around them.</summary>
public sealed record Plan
{
    /// <summary>The batch's name.</summary>
    public required string Batch { get; init; }

    /// <summary>The zone all local times are in.</summary>
    public required DateTimeZone Zone { get; init; }

    /// <summary>Nothing is planned before this.</summary>
    public required ZonedDateTime From { get; init; }

    /// <summary>How close to the low figures the plan is laid.</summary>
    public required Pace Pace { get; init; }

    /// <summary>Days with at least one task, in order; several sittings of a day (and of several painters) in order of start.</summary>
    public required Sequence<PlannedDay> Days { get; init; }

    /// <summary>When each model is finished, against its due time, in file order.</summary>
    public required Sequence<ModelFinish> Finishes { get; init; }

    /// <summary>Every mask with the times it goes on and comes off.</summary>
    public required Sequence<PlannedMask> Masks { get; init; }

    /// <summary>What each paint, thinner and mix part is needed for all that is to be done, against stock.</summary>
    public required Sequence<ShoppingItem> Shopping { get; init; }

    /// <summary>Findings about the plan itself (what brisk pace risks, lateness); also every silence with its reason.</summary>
    public required Sequence<Finding> Findings { get; init; }

    /// <summary>
    /// Where a due time is missed: changes with which all is in time, cheapest first; if none was found, the nearest. Each was planned anew.
    /// </summary>
    public Sequence<WayOut> WaysOut { get; init; }

    /// <summary>What is taken as done: it is in none of the days, and what is left goes on from it. Null if nothing is.</summary>
    public DoneWork? Done { get; init; }

    /// <summary>What is different from the plan it was to stay close to; null if there was none.</summary>
    public PlanComparison? Kept { get; init; }

    /// <summary>How many whole days before it was asked for the plan begins; 0 if less than one, or if it begins later.</summary>
    public int DaysPast { get; init; }

    /// <summary>How good it is.</summary>
    public required PlanMeasure Measure { get; init; }

    /// <summary>The chain of tasks and waits that makes the plan as long as it is, first to last, in words.</summary>
    public required Sequence<string> CriticalChain { get; init; }

    /// <summary>Figures used that nobody has confirmed: drying defaults, size classes, minutes.</summary>
    public required Sequence<string> Assumptions { get; init; }
}

/// <summary>How good the plan is.</summary>
/// <param name="AttendedMinutes">Hands busy, with set-ups and clean-outs.</param>
/// <param name="OpenMinutes">For how long the bench is open until everything is ready, the share kept free left out.</param>
/// <param name="BoundOpenMinutes">In no plan is the bench open for less until everything is ready.</param>
/// <param name="NoneReadyBefore">No plan has everything ready before this.</param>
/// <param name="GapEvenings">In at most this many sittings less could everything be ready.</param>
/// <param name="IsBestAsParted">Whether it is proved that no plan ends sooner with lots parted at most where they are here.</param>
/// <param name="CleanOuts">How many times a tool is cleaned out.</param>
/// <param name="StoppedEarly">True if the search was interrupted.</param>
/// <param name="FirstAim">What the batch puts first, after the due times.</param>
public sealed record PlanMeasure(
    int AttendedMinutes,
    int OpenMinutes,
    int BoundOpenMinutes,
    ZonedDateTime NoneReadyBefore,
    int GapEvenings,
    bool IsBestAsParted,
    int CleanOuts,
    bool StoppedEarly,
    BatchAim FirstAim = BatchAim.FinishSoon);

/// <summary>One day.</summary>
public sealed record PlannedDay(LocalDate Date, Sequence<PlannedSitting> Sittings);

/// <summary>One stretch of one painter at the bench.</summary>
public sealed record PlannedSitting
{
    /// <summary>Who sits.</summary>
    public required string Painter { get; init; }

    /// <summary>When the sitting opens.</summary>
    public required ZonedDateTime From { get; init; }

    /// <summary>When it closes.</summary>
    public required ZonedDateTime To { get; init; }

    /// <summary>What to take out, mix and check before.</summary>
    public required Sequence<string> TakeOut { get; init; }

    /// <summary>Mixes to make in this sitting, with amounts.</summary>
    public required Sequence<MixOrder> Mixes { get; init; }

    /// <summary>The tasks in order of start.</summary>
    public required Sequence<PlannedTask> Tasks { get; init; }

    /// <summary>What is left drying when the sitting is over.</summary>
    public required Sequence<LeftDrying> Drying { get; init; }

    /// <summary>Masks still on when the sitting is over.</summary>
    public required Sequence<MaskLeft> MasksOn { get; init; }

    /// <summary>Cautions of the sitting, each once.</summary>
    public required Sequence<Caution> Cautions { get; init; }

    /// <summary>Attended minutes.</summary>
    public required int AttendedMinutes { get; init; }

    /// <summary>For how many minutes the sittings of this day to which the painter comes are open, all together, whether anything is done in them or not.</summary>
    public required int DayMinutes { get; init; }

    /// <summary>
    /// The most attended minutes that the bench allows the painter on this day, in all its sittings together; null where they are no longer than that.
    /// </summary>
    public int? MostPerDayMinutes { get; init; }

    /// <summary>What is free at the end though more is to be done, and why; null if that is little, or nothing is left for the painter.</summary>
    public FreeTime? Free { get; init; }
}

/// <summary>Time at the end of a sitting that is not used.</summary>
/// <param name="Minutes">How many minutes, what is kept free of every sitting not counted.</param>
/// <param name="Because">Why nothing is begun.</param>
public sealed record FreeTime(int Minutes, FreeBecause Because);

/// <summary>Why nothing is begun at the end of a sitting.</summary>
public abstract record FreeBecause
{
    private protected abstract void Closed();

    /// <summary>Everything that is left has to wait: for a coat, a joint, a time of its own.</summary>
    public sealed record AllWaits : FreeBecause
    {
        private protected override void Closed() { }
    }

    /// <summary>What does not have to wait is set for later: the painter has decided its time.</summary>
    public sealed record Decided : FreeBecause
    {
        private protected override void Closed() { }
    }

    /// <summary>What could still be begun would not be finished.</summary>
    public sealed record TooShort : FreeBecause
    {
        private protected override void Closed() { }
    }

    /// <summary>There is as much work in the sitting as there may be.</summary>
    /// <param name="IsEven">True if more would not keep the days even; false if the bench allows no more.</param>
    public sealed record HasShare(bool IsEven) : FreeBecause
    {
        private protected override void Closed() { }
    }

    /// <summary>Something could be begun, and is not.</summary>
    /// <param name="Task">What could be begun: <c>'trim the suit' on Line diver</c>.</param>
    /// <param name="ForSome">True if only some of its pieces could be done.</param>
    /// <param name="Why">Why it comes later.</param>
    public sealed record CouldBegin(string Task, bool ForSome, WhyNotBegun Why) : FreeBecause
    {
        private protected override void Closed() { }
    }
}

/// <summary>Why a task is not begun where it could be.</summary>
public enum WhyNotBegun
{
    /// <summary>No model would be ready sooner: none hangs on it.</summary>
    NothingSooner,

    /// <summary>A model hangs on it, and no plan was found that ends sooner with it there.</summary>
    NothingFound,

    /// <summary>The plan stays close to an earlier one.</summary>
    StaysClose,

    /// <summary>The batch puts something else before an early finish.</summary>
    OtherAim,
}

/// <summary>One thing to do.</summary>
public sealed record PlannedTask
{
    /// <summary>Stable name within the plan: model, step and first unit, such as <c>heavy-diver/12/1</c>; of coats that dry between with the coat, <c>heavy-diver/12.2/1</c>.</summary>
    public required string Id { get; init; }

    /// <summary>What sort of task it is.</summary>
    public required TaskSort Sort { get; init; }

    /// <summary>When to start.</summary>
    public required ZonedDateTime From { get; init; }

    /// <summary>When it is done.</summary>
    public required ZonedDateTime To { get; init; }

    /// <summary>
    /// The step's name, the same in every plan of the batch as long as the step says the same: verb, own name or areas, and paint, such as
    /// <c>coat suit with old brass</c>; the second step of a model that says the same ends in <c>(2)</c>. Empty for a clean-out.
    /// </summary>
    public string Step { get; init; } = "";

    /// <summary>The start to the half minute, as the scheduler has it; <see cref="From"/> is the minute in which it lies.</summary>
    public Instant ExactStart { get; init; }

    /// <summary>The end to the half minute; <see cref="To"/> is the minute in which it lies.</summary>
    public Instant ExactEnd { get; init; }

    /// <summary>When the work on the pieces themselves begins, after cleaning out and setting up, to the half minute.</summary>
    public Instant ExactWorkStart { get; init; }

    /// <summary>When that work is over, before putting away, to the half minute.</summary>
    public Instant ExactWorkEnd { get; init; }

    /// <summary>True if all its pieces are done at once, false if one after the other.</summary>
    public bool Together { get; init; }

    /// <summary>The verb; empty for a clean-out.</summary>
    public required string Verb { get; init; }

    /// <summary>Model; empty for a clean-out.</summary>
    public required string Model { get; init; }

    /// <summary>Kit; empty for a clean-out.</summary>
    public required string Kit { get; init; }

    /// <summary>First unit, from 1; 0 for a clean-out.</summary>
    public required int FirstUnit { get; init; }

    /// <summary>How many units; 0 for a clean-out.</summary>
    public required int Units { get; init; }

    /// <summary>How many units the model has.</summary>
    public required int OfUnits { get; init; }

    /// <summary>Which of the step's coats it is, from 1, where each has to dry before the next; otherwise 1.</summary>
    public int Coat { get; init; } = 1;

    /// <summary>How many such coats the step has; 1 where it is done in one go.</summary>
    public int OfCoats { get; init; } = 1;

    /// <summary>Areas named, or <c>all</c>.</summary>
    public required Sequence<string> Areas { get; init; }

    /// <summary>The instruction in words, ready to print: <c>Airbrush old brass on the suit, coat 1 of 2</c>.</summary>
    public required string Words { get; init; }

    /// <summary>What is used and how much, or null.</summary>
    public PaintUse? Paint { get; init; }

    /// <summary>The tool, or null.</summary>
    public string? Tool { get; init; }

    /// <summary>Its first minutes go into cleaning the tool out: how many, and of what.</summary>
    public CleanOut? CleanOutBefore { get; init; }

    /// <summary>Until when its tool then stands loaded, if that is longer than the paint in it stays open; null otherwise.</summary>
    public ZonedDateTime? LoadedUntil { get; init; }

    /// <summary>What this task starts to wait for, and when that ends; null if nothing.</summary>
    public Sequence<WaitStarted> Starts { get; init; }

    /// <summary>The one thing that keeps it from starting earlier, in words.</summary>
    public required string WhyNotEarlier { get; init; }

    /// <summary>
    /// True if nothing but the task before it in the sitting keeps it from starting earlier: a page may then leave <see cref="WhyNotEarlier"/> out.
    /// </summary>
    public bool FollowsOn { get; init; }

    /// <summary>The latest start before something goes wrong (mask limit, workable time); null if none.</summary>
    public ZonedDateTime? NotLaterThan { get; init; }

    /// <summary>The painter's remark, or null.</summary>
    public string? Note { get; init; }

    /// <summary>Names of the cautions of <see cref="PlannedSitting.Cautions"/> that concern it.</summary>
    public Sequence<string> Cautions { get; init; }

    /// <summary>Where the file says the step.</summary>
    public Place? Place { get; init; }
}

/// <summary>What sort of task.</summary>
public enum TaskSort
{
    /// <summary>A step of a route.</summary>
    Step,

    /// <summary>Cleaning a tool at the end of a sitting.</summary>
    CloseDown,
}

/// <summary>Paint for one task.</summary>
/// <param name="Name">Paint or mix.</param>
/// <param name="Millilitres">For all units of the task, with losses.</param>
/// <param name="Loads">How many fillings of the cup; 0 by brush.</param>
/// <param name="FromMix">Index into the sitting's mixes, or into those of <paramref name="MixedBy"/>; null for a paint from its pot.</param>
/// <param name="MixedBy">The painter of the same sitting who has mixed it before; null if whoever does the task mixes it.</param>
public sealed record PaintUse(string Name, double Millilitres, int Loads, int? FromMix, string? MixedBy = null);

/// <summary>Cleaning a tool out before a task.</summary>
public sealed record CleanOut(string Tool, string Of, int Minutes);

/// <summary>A mix to make in a sitting.</summary>
/// <param name="Name">The mix.</param>
/// <param name="Millilitres">How much in all.</param>
/// <param name="Parts">Each part and the thinner: name, parts, mL, drops.</param>
/// <param name="UseBy">When its pot life ends, counted from the first task that uses it; null if it does not matter.</param>
public sealed record MixOrder(string Name, double Millilitres, Sequence<MixPart> Parts, ZonedDateTime? UseBy)
{
    /// <summary>The other painters of the sitting who take some of it, in the order in which they do.</summary>
    public Sequence<string> AlsoFor { get; init; } = [];
}

/// <summary>One part of a mix.</summary>
/// <param name="Name">Paint or thinner.</param>
/// <param name="Parts">Parts by volume, whole numbers where they come within a twentieth; of a thinner, in the same parts.</param>
/// <param name="Millilitres">By measure.</param>
/// <param name="Drops">At 20 drops per mL (USP 1101 dropper, water); rounded.</param>
public sealed record MixPart(string Name, double Parts, double Millilitres, int Drops);

/// <summary>A wait a task starts.</summary>
/// <param name="For">What is waited for: <c>mask-safe</c>.</param>
/// <param name="Earliest">When the low figure is reached.</param>
/// <param name="Comfortable">When nobody would say anything.</param>
/// <param name="IsDefault">True if the figure is a default of the family, not the label's.</param>
public sealed record WaitStarted(string For, ZonedDateTime Earliest, ZonedDateTime Comfortable, bool IsDefault);

/// <summary>Something left drying.</summary>
public sealed record LeftDrying(string Model, string What, string For, ZonedDateTime Until);

/// <summary>A mask left on.</summary>
public sealed record MaskLeft(string Model, string Mask, ZonedDateTime ComesOff, ZonedDateTime? MustBeOffBy);

/// <summary>
/// A mask over the whole plan; for a parted lot, from the first unit on to the last unit off. <c>MustBeOffBy</c> is how late that may become
/// before the limit of any unit breaks.
/// </summary>
public sealed record PlannedMask(string Model, string Mask, string Material, ZonedDateTime On, ZonedDateTime Off, ZonedDateTime? MustBeOffBy);

/// <summary>When a model is finished.</summary>
/// <param name="Model">The model.</param>
/// <param name="Kit">Its kit.</param>
/// <param name="Units">How many.</param>
/// <param name="LastTask">When the hands are done.</param>
/// <param name="Ready">When the last layer can be handled, or has cured where it is wanted for play or packing.</param>
/// <param name="Due">By when it should be, or null.</param>
/// <param name="Cured">When it can be packed and played with, or null if nothing dries.</param>
/// <param name="Purpose">What it is wanted for.</param>
public sealed record ModelFinish(
    string Model,
    string Kit,
    int Units,
    ZonedDateTime LastTask,
    ZonedDateTime Ready,
    ZonedDateTime? Due,
    ZonedDateTime? Cured,
    Purpose Purpose = Purpose.Display);

/// <summary>What is needed against what there is.</summary>
/// <param name="Name">Paint or thinner.</param>
/// <param name="NeedMillilitres">For all that is to be done, with losses and 20 % to spare.</param>
/// <param name="StockMillilitres">What the file says is there, or null.</param>
/// <param name="UsedIn">The mixes and steps it goes into.</param>
public sealed record ShoppingItem(string Name, double NeedMillilitres, double? StockMillilitres, Sequence<string> UsedIn);
