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

    /// <summary>How many sittings have something to do.</summary>
    public required int Sittings { get; init; }

    /// <summary>Minutes with hands busy.</summary>
    public required int AttendedMinutes { get; init; }

    /// <summary>How many times a tool is cleaned out.</summary>
    public required int CleanOuts { get; init; }

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
                task.Model, task.Step, task.Coat, task.OfCoats, task.FirstUnit, task.Units, task.OfUnits, sitting.Painter, task.ExactStart, task.To.ToInstant(), sitting.From.ToInstant(), sitting.To.ToInstant(), task.Words))).OrderBy(task => task.Start).ToSequence(),
            Finishes = plan.Finishes.Select(finish => new WrittenFinish(finish.Model, finish.Ready.ToInstant(), finish.Due?.ToInstant())).ToSequence(),
            Sittings = sittings.Count,
            AttendedMinutes = plan.Measure.AttendedMinutes,
            CleanOuts = plan.Measure.CleanOuts,
        };
    }
}

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
/// <param name="End">When the hands are free again.</param>
/// <param name="Sitting">When the sitting opens in which it is done.</param>
/// <param name="SittingEnd">When it closes.</param>
/// <param name="Words">The instruction.</param>
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
    Instant Sitting,
    Instant SittingEnd,
    string Words);

/// <summary>When a model is ready, and by when it should be.</summary>
public sealed record WrittenFinish(string Model, Instant Ready, Instant? Due);
