using System.Collections.Immutable;
using Pipeline.Scheduling;
using Pipeline.Surfaces;

namespace Pipeline.Planning;

/// <summary>An earlier plan as the scheduler keeps to it: its tasks found again in the batch as it is now.</summary>
internal static class Keeping
{
    // A task that slides by some minutes has hardly moved, by an hour it has; that is worth finishing eight hours later to avoid.
    private const long WithinTicks = 120;
    private const double TicksPerMovedRun = 960;

    /// <summary>What is to be kept, without what has been done. Steps that are no longer there, and tasks before the new plan begins, are left out; what is under way then goes on at once.</summary>
    public static Keep Of(WrittenPlan earlier, Walked walked, Posed posed)
    {
        var activities = NamedActivities.Of(walked, posed.Routes);
        var painters = walked.Batch.Bench.Painters.Select(painter => painter.Name).ToList();
        var runs = ImmutableArray.CreateBuilder<Run>();
        foreach (var task in earlier.Tasks.Where(task => task.Start >= posed.Clock.Origin || IsUnderWay(task)))
        {
            if (!activities.TryGetValue((task.Model, task.Step, task.Coat), out var activity))
                continue;
            // pieces may have gone since
            var units = Math.Min(task.Units, posed.Problem.Activities[activity].Units - (task.FirstUnit - 1));
            if (units > 0)
                runs.Add(new Run(activity, task.FirstUnit - 1, units, painters.IndexOf(task.Painter), ToolNumber: -1, Math.Max(0, posed.Clock.TickAt(task.Start)), CleanOut: 0, SetUp: 0, Work: 0, PutAway: 0));
        }

        bool IsUnderWay(WrittenTask task) => WrittenPlan.Minute(task.End) > WrittenPlan.Minute(posed.Clock.Origin);

        return new Keep(new Schedule(runs.ToImmutable(), []), TicksPerMovedRun, WithinTicks);
    }
}
