using NodaTime;
using Pipeline.Abstractions;

namespace Pipeline.Planning;

/// <summary>What is different between two plans of one batch.</summary>
public sealed record PlanComparison
{
    /// <summary>The batch's name.</summary>
    public required string Batch { get; init; }

    /// <summary>The zone times are said in: that of the second plan.</summary>
    public required DateTimeZone Zone { get; init; }

    /// <summary>What the second plan takes as done; null if nothing.</summary>
    public DoneWork? Done { get; init; }

    /// <summary>How many tasks are where they were.</summary>
    public required int Unmoved { get; init; }

    /// <summary>Tasks of the second plan that were elsewhere in the first, in order of their new start.</summary>
    public required Sequence<TaskMove> Moves { get; init; }

    /// <summary>Tasks whose step or coat is in the second plan only.</summary>
    public required Sequence<WrittenTask> Added { get; init; }

    /// <summary>Tasks whose step or coat is in the first plan only.</summary>
    public required Sequence<WrittenTask> Gone { get; init; }

    /// <summary>Each model of either plan, in the order of the second.</summary>
    public required Sequence<FinishChange> Finishes { get; init; }

    /// <summary>Sittings with something to do, before and after.</summary>
    public required Figures Sittings { get; init; }

    /// <summary>Minutes with hands busy, before and after.</summary>
    public required Figures AttendedMinutes { get; init; }

    /// <summary>Clean-outs, before and after.</summary>
    public required Figures CleanOuts { get; init; }

    /// <summary>True if nothing is different.</summary>
    public bool IsSame => Moves.IsEmpty && Added.IsEmpty && Gone.IsEmpty && Finishes.All(finish => finish.Before == finish.After) && AttendedMinutes.Difference == 0;

    /// <summary>
    /// Compares two plans of one batch. A task is found again by its model, its step's name, its coat and its first unit. What the second takes
    /// as done is not looked at: neither plan has it still to do.
    /// </summary>
    public static PlanComparison Of(WrittenPlan before, WrittenPlan after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var left = after.Done is null ? before : before.Without(after.Done);
        var earlier = left.Tasks.ToLookup(task => (task.Model, task.Step, task.Coat));
        var later = after.Tasks.Select(task => (task.Model, task.Step, task.Coat)).ToHashSet();
        var moves = new List<TaskMove>();
        var added = new List<WrittenTask>();
        foreach (var task in after.Tasks.OrderBy(task => task.Start))
        {
            var known = earlier[(task.Model, task.Step, task.Coat)].OrderBy(each => each.FirstUnit).ToList();
            // of a lot that was parted elsewhere, the part in which its first unit was
            var was = known.Find(each => each.FirstUnit <= task.FirstUnit && task.FirstUnit < each.FirstUnit + each.Units);
            if (was is null)
                added.Add(task);
            // half a minute makes no difference on the wall
            else if (WrittenPlan.Minute(was.Start) != WrittenPlan.Minute(task.Start) || was.FirstUnit != task.FirstUnit || was.Units != task.Units || was.Painter != task.Painter)
                moves.Add(new TaskMove(was, task));
        }

        var finished = before.Finishes.ToDictionary(finish => finish.Model, StringComparer.Ordinal);
        var still = after.Finishes.Select(finish => finish.Model).ToHashSet(StringComparer.Ordinal);
        return new PlanComparison
        {
            Batch = after.Batch,
            Zone = after.Zone,
            Done = after.Done,
            Unmoved = after.Tasks.Count - moves.Count - added.Count,
            Moves = moves.ToSequence(),
            Added = added.ToSequence(),
            Gone = left.Tasks.Where(task => !later.Contains((task.Model, task.Step, task.Coat))).OrderBy(task => task.Start).ToSequence(),
            Finishes = after.Finishes.Select(finish => new FinishChange(finish.Model, finished.GetValueOrDefault(finish.Model)?.Ready, finish.Ready, finish.Due))
                .Concat(before.Finishes.Where(finish => !still.Contains(finish.Model)).Select(finish => new FinishChange(finish.Model, finish.Ready, null, finish.Due))).ToSequence(),
            Sittings = new Figures(left.Sittings, after.Sittings),
            AttendedMinutes = new Figures(left.AttendedMinutes, after.AttendedMinutes),
            CleanOuts = new Figures(left.CleanOuts, after.CleanOuts),
        };
    }
}

/// <summary>A task that is elsewhere.</summary>
public sealed record TaskMove(WrittenTask Before, WrittenTask After)
{
    /// <summary>
    /// True if it is in another sitting; otherwise it only starts at another time of the same one, is parted otherwise or done by another painter.
    /// A sitting that opens or closes at another time is still the same as long as some of it is.
    /// </summary>
    public bool IsToAnotherSitting => Before.SittingEnd <= After.Sitting || After.SittingEnd <= Before.Sitting;

    /// <summary>True if it only begins up to ten minutes sooner or later in the same sitting.</summary>
    public bool IsSlide => !IsToAnotherSitting && Before.FirstUnit == After.FirstUnit && Before.Units == After.Units && Before.Painter == After.Painter
        && Math.Abs((After.Start - Before.Start).TotalMinutes) <= FewMinutes;

    private const int FewMinutes = 10;
}

/// <summary>A model's finish; before or after is null where a plan does not have the model.</summary>
public sealed record FinishChange(string Model, Instant? Before, Instant? After, Instant? Due);

/// <summary>A figure of both plans.</summary>
public readonly record struct Figures(int Before, int After)
{
    /// <summary>How much more it is; negative if less.</summary>
    public int Difference => After - Before;
}
