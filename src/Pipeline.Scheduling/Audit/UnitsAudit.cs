namespace Pipeline.Scheduling;

/// <summary>Every unit once and in order; lots parted only where they may be; figures, pins and earliest starts.</summary>
internal static class UnitsAudit
{
    public static void Run(Problem problem, Schedule schedule, HashSet<Run> judged, List<Fault> faults)
    {
        var byActivity = schedule.Runs.ToLookup(r => r.Activity);
        for (var a = 0; a < problem.Activities.Length; a++)
        {
            var activity = problem.Activities[a];
            var runs = byActivity[a].OrderBy(r => r.FirstUnit).ToList();
            var next = 0;
            foreach (var run in runs)
            {
                if (run.FirstUnit != next || run.Units < 1)
                    faults.Add(new Fault(FaultKind.Units, $"'{activity.Name}': unit {next} should come next, not {run.Units} units from {run.FirstUnit}."));
                next = run.FirstUnit + run.Units;
            }

            if (next != activity.Units)
                faults.Add(new Fault(FaultKind.Units, $"'{activity.Name}': {next} units instead of {activity.Units}."));
            var coming = runs.Where(judged.Contains).ToList();
            var pinned = activity.PinnedStart is not null && activity.Past.IsEmpty;
            if (coming.Count > 1 && (activity.Together || !activity.MayBeParted || pinned))
                faults.Add(new Fault(FaultKind.Units, $"'{activity.Name}' must not be parted."));
            for (var i = 1; i < runs.Count; i++)
            {
                var before = runs[i - 1];
                var earliest = UnitTimes.Start(problem, before, before.FirstUnit + before.Units - 1) + activity.PerUnit;
                if (judged.Contains(runs[i]) && runs[i].WorkStart < earliest)
                    faults.Add(new Fault(FaultKind.Units, $"'{activity.Name}': unit {runs[i].FirstUnit} starts before the unit before it is through."));
            }

            foreach (var run in coming)
                Figures(activity, run, pinned, faults);
        }
    }

    private static void Figures(Activity activity, Run run, bool pinned, List<Fault> faults)
    {
        var work = activity.Together ? activity.PerUnit : run.Units * activity.PerUnit;
        if (run.SetUp != activity.SetUp || run.Work != work || run.PutAway != activity.PutAway || run.CleanOut < 0)
            faults.Add(new Fault(FaultKind.Figures, $"'{activity.Name}' at {run.Start}: set-up, work or putting away is not what it should be."));
        if (activity.Tool is null && (run.CleanOut != 0 || run.ToolNumber != -1))
            faults.Add(new Fault(FaultKind.Figures, $"'{activity.Name}' at {run.Start} has a tool or a clean-out and needs none."));
        if (pinned && run.Start != activity.PinnedStart)
            faults.Add(new Fault(FaultKind.Pin, $"'{activity.Name}' starts at {run.Start} and is pinned to {activity.PinnedStart}."));
        if (run.Start < activity.NotBefore)
            faults.Add(new Fault(FaultKind.NotBefore, $"'{activity.Name}' starts at {run.Start}, before {activity.NotBefore}."));
    }
}
