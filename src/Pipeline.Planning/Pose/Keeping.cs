using System.Collections.Immutable;
using Pipeline.Scheduling;
using Pipeline.Surfaces;

namespace Pipeline.Planning;

/// <summary>An earlier plan as the scheduler keeps to it: its tasks found again in the batch as it is now.</summary>
internal static class Keeping
{
    // A task that slides by some minutes within an evening has hardly moved; one that has is worth finishing eight hours later to avoid.
    private const long WithinTicks = 60;
    private const double TicksPerMovedRun = 960;

    /// <summary>What is to be kept. Steps that are no longer there, and tasks before the new plan begins, are left out.</summary>
    public static Keep Of(WrittenPlan earlier, Walked walked, Posed posed)
    {
        var activities = new Dictionary<(string Model, string Step, int Coat), int>();
        for (var r = 0; r < walked.Routes.Count; r++)
        {
            var route = walked.Routes[r].Route;
            var names = StepNames.Of(route);
            for (var s = 0; s < names.Count; s++)
            {
                foreach (var activity in posed.Routes[r].Of(s))
                    activities.TryAdd((route.Model.Name, names[s], posed.Activities[activity].Pass + 1), activity);
            }
        }

        var painters = walked.Batch.Bench.Painters.Select(painter => painter.Name).ToList();
        var runs = ImmutableArray.CreateBuilder<Run>();
        foreach (var task in earlier.Tasks.Where(task => task.Start >= posed.Clock.Origin))
        {
            if (activities.TryGetValue((task.Model, task.Step, task.Coat), out var activity))
                runs.Add(new Run(activity, task.FirstUnit - 1, task.Units, painters.IndexOf(task.Painter), ToolNumber: -1, posed.Clock.TickAt(task.Start), CleanOut: 0, SetUp: 0, Work: 0, PutAway: 0));
        }

        return new Keep(new Schedule(runs.ToImmutable(), []), TicksPerMovedRun, WithinTicks);
    }
}
