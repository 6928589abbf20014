namespace Pipeline.Scheduling;

/// <summary>One thing a schedule gets wrong.</summary>
/// <param name="Kind">Which kind of constraint is broken.</param>
/// <param name="Text">What exactly, with indexes and ticks.</param>
public sealed record Fault(FaultKind Kind, string Text);

/// <summary>The kinds of constraint a schedule can break.</summary>
public enum FaultKind
{
    /// <summary>Units are missing, twice there, out of order, or a lot is parted that must not be.</summary>
    Units,

    /// <summary>A run's own figures do not follow from its activity.</summary>
    Figures,

    /// <summary>A past run is not as it was.</summary>
    Past,

    /// <summary>Work outside the open hours.</summary>
    OpenHours,

    /// <summary>A worker does two things at once.</summary>
    WorkerTwice,

    /// <summary>A worker does what others must do.</summary>
    WrongWorker,

    /// <summary>More attended work in a day than the worker's cap.</summary>
    Cap,

    /// <summary>A least wait is not kept.</summary>
    Least,

    /// <summary>A greatest wait is not kept.</summary>
    Greatest,

    /// <summary>A tool is used twice at once.</summary>
    ToolTwice,

    /// <summary>A clean-out is not as long as the loads ask for.</summary>
    CleanOut,

    /// <summary>A tool is left loaded, or closed down wrongly.</summary>
    CloseDown,

    /// <summary>A place holds more than it can.</summary>
    Place,

    /// <summary>A pinned start is not kept.</summary>
    Pin,

    /// <summary>A run starts before it may.</summary>
    NotBefore,
}

/// <summary>
/// Checks a schedule against its problem, one constraint after the other, as plainly as can be.
/// It shares no code with the solver on purpose, and judges every schedule the solver returns.
/// Hard due times are not judged here: a schedule that misses one is a schedule all the same.
/// </summary>
public static class Auditor
{
    /// <summary>Lists everything the schedule gets wrong; nothing if it keeps every constraint.</summary>
    public static IReadOnlyList<Fault> Audit(Problem problem, Schedule schedule)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(schedule);
        var faults = new List<Fault>();
        foreach (var run in schedule.Runs)
        {
            if (run.Activity < 0 || run.Activity >= problem.Activities.Length)
                return [new Fault(FaultKind.Units, $"A run names activity {run.Activity}, which there is not.")];
        }

        var judged = new HashSet<Run>(schedule.Runs, ReferenceEqualityComparer.Instance);
        var byActivity = schedule.Runs.ToLookup(r => r.Activity);
        for (var a = 0; a < problem.Activities.Length; a++)
        {
            var activity = problem.Activities[a];
            foreach (var past in activity.Past)
            {
                if (byActivity[a].FirstOrDefault(r => r == past) is { } same)
                    judged.Remove(same);
                else
                    faults.Add(new Fault(FaultKind.Past, $"A past run of '{activity.Name}' is missing or changed."));
            }
        }

        UnitsAudit.Run(problem, schedule, judged, faults);
        // without every unit once, the rest cannot be looked at
        if (faults.Any(f => f.Kind is FaultKind.Units or FaultKind.Past))
            return faults;
        HoursAudit.Run(problem, schedule, judged, faults);
        WaitsAudit.Run(problem, schedule, judged, faults);
        ToolsAudit.Run(problem, schedule, judged, faults);
        PlacesAudit.Run(problem, schedule, judged, faults);
        return faults;
    }
}

/// <summary>When each unit starts and finishes, read off the runs.</summary>
internal static class UnitTimes
{
    public static long Start(Problem problem, Run run, int unit)
    {
        var activity = problem.Activities[run.Activity];
        return run.WorkStart + (activity.Together ? 0 : (unit - run.FirstUnit) * activity.PerUnit);
    }

    public static long Finish(Problem problem, Run run, int unit)
    {
        var activity = problem.Activities[run.Activity];
        return Start(problem, run, unit) + activity.PerUnit + activity.Unattended;
    }

    public static Dictionary<(int Activity, int Unit), Run> ByUnit(Schedule schedule)
    {
        var byUnit = new Dictionary<(int, int), Run>();
        foreach (var run in schedule.Runs)
        {
            for (var k = run.FirstUnit; k < run.FirstUnit + run.Units; k++)
                byUnit[(run.Activity, k)] = run;
        }

        return byUnit;
    }
}
