using NodaTime;
using Pipeline.Abstractions;

namespace Pipeline.Planning;

/// <summary>A plan as it was once written down: what it takes to stay close to it, or to compare it with another.</summary>
public sealed record WrittenPlan
{
    /// <summary>The batch's name.</summary>
    public required string Batch { get; init; }

    /// <summary>The zone its times are said in.</summary>
    public required DateTimeZone Zone { get; init; }

    /// <summary>The steps' tasks in order of start; cleaning a tool at the end of a sitting is none.</summary>
    public required Sequence<WrittenTask> Tasks { get; init; }

    /// <summary>When each model is ready, in file order.</summary>
    public required Sequence<WrittenFinish> Finishes { get; init; }

    /// <summary>Every cleaning of a tool at the end of its use, in order of start.</summary>
    public Sequence<WrittenCloseDown> CloseDowns { get; init; }

    /// <summary>What the plan takes as done; null if nothing.</summary>
    public DoneWork? Done { get; init; }

    /// <summary>What the painter calls the plan, such as the name of its file; null where it has none.</summary>
    public string? Name { get; init; }

    /// <summary>How many sittings have something to do.</summary>
    public int Sittings => Tasks.Select(task => (task.Painter, task.Sitting)).Concat(CloseDowns.Select(close => (close.Painter, close.Sitting))).Distinct().Count();

    /// <summary>Minutes with hands busy.</summary>
    public int AttendedMinutes => Tasks.Sum(task => Minutes(task.Start, task.End)) + CloseDowns.Sum(close => Minutes(close.Start, close.End));

    /// <summary>How many times a tool is cleaned out.</summary>
    public int CleanOuts => Tasks.Count(task => task.CleansFirst) + CloseDowns.Count;

    /// <summary>
    /// What of the plan is done by a moment: all whose hands' work has ended by then, of a task under way the pieces that were through, and what
    /// the plan took as done itself. Its tasks are in order of start.
    /// </summary>
    public DoneWork DoneBy(Instant until) => new(
        until,
        Name,
        (Done?.Tasks ?? []).Concat(Tasks.Select(task => task.DoneBy(until)).OfType<WrittenTask>()).OrderBy(task => task.Start).ToSequence(),
        (Done?.CloseDowns ?? []).Concat(CloseDowns.Where(close => Minute(close.End) <= Minute(until))).OrderBy(close => close.Start).ToSequence());

    /// <summary>The plan without the work that another takes as done.</summary>
    public WrittenPlan Without(DoneWork done)
    {
        ArgumentNullException.ThrowIfNull(done);
        var pieces = done.Tasks.SelectMany(task => task.Pieces).ToHashSet();
        return this with
        {
            Tasks = Tasks.Select(task => task.After(task.Pieces.TakeWhile(pieces.Contains).Count())).OfType<WrittenTask>().OrderBy(task => task.Start).ToSequence(),
            CloseDowns = CloseDowns.Without(close => Minute(close.End) <= Minute(done.Until)),
        };
    }

    /// <summary>A plan as it would be written down.</summary>
    public static WrittenPlan Of(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var sittings = plan.Days.SelectMany(day => day.Sittings).ToList();
        return new WrittenPlan
        {
            Batch = plan.Batch,
            Zone = plan.Zone,
            Tasks = sittings.SelectMany(sitting => sitting.Tasks.Where(task => task.Sort == TaskSort.Step).Select(task => new WrittenTask(
                task.Model,
                task.Step,
                task.Coat,
                task.OfCoats,
                task.FirstUnit,
                task.Units,
                task.OfUnits,
                sitting.Painter,
                task.ExactStart,
                task.ExactEnd,
                task.ExactWorkStart,
                task.ExactWorkEnd,
                task.Together,
                sitting.From.ToInstant(),
                sitting.To.ToInstant(),
                task.Words,
                task.CleanOutBefore is not null))).OrderBy(task => task.Start).ToSequence(),
            CloseDowns = sittings.SelectMany(sitting => sitting.Tasks.Where(task => task.Sort == TaskSort.CloseDown)
                .Select(task => new WrittenCloseDown(sitting.Painter, task.ExactStart, task.ExactEnd, sitting.From.ToInstant()))).OrderBy(close => close.Start).ToSequence(),
            Finishes = plan.Finishes.Select(finish => new WrittenFinish(finish.Model, finish.Ready.ToInstant(), finish.Due?.ToInstant())).ToSequence(),
            Done = plan.Done,
        };
    }

    // As the clock on the wall shows them.
    private static int Minutes(Instant start, Instant end) => (int)(Minute(end) - Minute(start));

    /// <summary>The minute an instant lies in.</summary>
    internal static long Minute(Instant instant) => (long)Math.Floor(instant.ToUnixTimeSeconds() / 60.0);
}

/// <summary>Work that is taken as done, as an earlier plan had it.</summary>
/// <param name="Until">Up to when.</param>
/// <param name="AsIn">What the painter calls the plan that had it; null where it has no name.</param>
/// <param name="Tasks">The steps' tasks, in order of start.</param>
/// <param name="CloseDowns">Every cleaning of a tool at the end of its use, in order of start.</param>
public sealed record DoneWork(Instant Until, string? AsIn, Sequence<WrittenTask> Tasks, Sequence<WrittenCloseDown> CloseDowns);

/// <summary>Some units going through a step.</summary>
/// <param name="Model">Whose.</param>
/// <param name="Step">The step's name, see <see cref="PlannedTask.Step"/>.</param>
/// <param name="Coat">Which of its coats, from 1, see <see cref="PlannedTask.Coat"/>.</param>
/// <param name="OfCoats">How many such coats it has.</param>
/// <param name="FirstUnit">From 1.</param>
/// <param name="Units">How many.</param>
/// <param name="OfUnits">How many the model has.</param>
/// <param name="Painter">Who does it.</param>
/// <param name="Start">When, to the half minute.</param>
/// <param name="End">When the hands are free again, to the half minute.</param>
/// <param name="WorkStart">When the work on the pieces themselves begins, after cleaning out and setting up.</param>
/// <param name="WorkEnd">When that is over, before putting away.</param>
/// <param name="Together">Whether all its pieces are done at once; else they are one after the other, each as long.</param>
/// <param name="Sitting">When the sitting opens in which it is done.</param>
/// <param name="SittingEnd">When it closes.</param>
/// <param name="Words">The instruction.</param>
/// <param name="CleansFirst">Whether it begins with cleaning its tool out.</param>
public sealed record WrittenTask(
    string Model,
    string Step,
    int Coat,
    int OfCoats,
    int FirstUnit,
    int Units,
    int OfUnits,
    string Painter,
    Instant Start,
    Instant End,
    Instant WorkStart,
    Instant WorkEnd,
    bool Together,
    Instant Sitting,
    Instant SittingEnd,
    string Words,
    bool CleansFirst = false)
{
    /// <summary>Each unit's way through the step or coat.</summary>
    internal IEnumerable<(string Model, string Step, int Coat, int Unit)> Pieces => Enumerable.Range(FirstUnit, Units).Select(unit => (Model, Step, Coat, unit));

    /// <summary>What of it has ended by a moment: all of it, the pieces that were through, or null for nothing.</summary>
    internal WrittenTask? DoneBy(Instant until)
    {
        if (WrittenPlan.Minute(End) <= WrittenPlan.Minute(until))
            return this;
        var through = Enumerable.Range(1, Units).Count(pieces => After(WorkStart, pieces) <= until);
        return Together || through == 0 ? null : First(through);
    }

    /// <summary>The part of it that is its first pieces.</summary>
    internal WrittenTask First(int pieces) => pieces == Units ? this
        : Together ? this with { Units = pieces }
        : this with { Units = pieces, End = After(WorkStart, pieces), WorkEnd = After(WorkStart, pieces) };

    /// <summary>What is left of it after so many of its pieces; null for nothing.</summary>
    internal WrittenTask? After(int pieces) => pieces == 0 ? this
        : pieces >= Units ? null
        : Together ? this with { FirstUnit = FirstUnit + pieces, Units = Units - pieces }
        : this with
        {
            FirstUnit = FirstUnit + pieces,
            Units = Units - pieces,
            Start = After(WorkStart, pieces),
            WorkStart = After(WorkStart, pieces),
            CleansFirst = false,
        };

    private Instant After(Instant start, int pieces) => start + ((WorkEnd - WorkStart) * pieces / Units);
}

/// <summary>Cleaning a tool at the end of its use.</summary>
/// <param name="Painter">Who does it.</param>
/// <param name="Start">When.</param>
/// <param name="End">When the hands are free again.</param>
/// <param name="Sitting">When the sitting opens in which it is done.</param>
public sealed record WrittenCloseDown(string Painter, Instant Start, Instant End, Instant Sitting);

/// <summary>When a model is ready, and by when it should be.</summary>
public sealed record WrittenFinish(string Model, Instant Ready, Instant? Due);
